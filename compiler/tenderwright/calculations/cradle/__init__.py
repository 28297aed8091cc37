"""Rail cars under a hull on keel blocks: line load, the train, and whether it fits."""
