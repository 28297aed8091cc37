"""Schedule: the critical path, with limited crews, in trials, and from working days to days that pass."""
