"""The parts of editions, one kind to a file."""
