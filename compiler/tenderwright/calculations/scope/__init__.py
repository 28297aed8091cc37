"""Scope: which items to buy with the money there is, who pays for what, and what further money would add."""
