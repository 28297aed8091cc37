"""Tenderwright compiles a ship's docking package into a tender that yards can price."""

__version__ = "0.1.0"
