"""Does the package describe one possible ship and one possible docking? One subject, one file."""
