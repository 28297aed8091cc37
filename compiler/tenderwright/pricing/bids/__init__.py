"""Understands returned price forms: what a yard wrote, and what it changed that is not its own to change."""
