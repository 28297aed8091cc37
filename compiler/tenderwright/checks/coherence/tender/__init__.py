"""Does the package describe one possible tender? One subject, one file."""
