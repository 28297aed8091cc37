"""The package describes one possible ship and one possible docking: gross mistakes are told."""
