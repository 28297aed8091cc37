"""Start: a small valid package to begin from, and the writing of it."""
