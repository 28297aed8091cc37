"""Checks of the findings of a docking against the package that was tendered."""
