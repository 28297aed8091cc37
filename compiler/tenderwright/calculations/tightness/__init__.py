"""Tightness of boundaries: which test each one needs, its pressure, and heads of water."""
