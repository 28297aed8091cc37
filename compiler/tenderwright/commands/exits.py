"""Exit codes, the same for every command."""

CLEAN = 0
MISTAKES = 1
WRONG_USE = 2
FAILURE = 3
