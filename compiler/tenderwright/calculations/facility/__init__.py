"""Facility: whether a dock, floating dock, shiplift or slipway can take her, limit by limit."""
