"""Quantities as people write them: parsing, units, dimensions, rounding and display."""
