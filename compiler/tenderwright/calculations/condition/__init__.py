"""Condition: weights and tanks summed, how the ship then floats, and what moves her to a wanted trim."""
