"""Plan: the days on which what the tender asks for falls due."""
