"""Hydrostatics: what a hull form displaces, where, and how much of its shell is wet."""
