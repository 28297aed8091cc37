"""Compose: turn the linked, calculated package into editions, deciding wording and order."""
