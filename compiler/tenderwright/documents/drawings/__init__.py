"""Draw the ship to scale as SVG of our own: tanks, coating zones, cradles, lines."""
