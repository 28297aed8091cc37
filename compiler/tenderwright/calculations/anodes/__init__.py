"""Sacrificial anodes: current demand, mass and number."""
