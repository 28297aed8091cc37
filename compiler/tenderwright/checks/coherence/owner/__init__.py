"""Do the owner's papers fit together, and fit the package? One subject, one file."""
