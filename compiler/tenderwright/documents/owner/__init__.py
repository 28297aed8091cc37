"""The owner's papers: what the yard's side may not name."""
