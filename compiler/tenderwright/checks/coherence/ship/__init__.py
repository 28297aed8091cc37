"""Does the package describe one possible ship? One subject, one file."""
