"""Gross mistakes in the data of the ship."""
