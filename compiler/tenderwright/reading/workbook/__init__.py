"""Reads workbooks that come from outside: what may do harm is refused first, and nothing in them is ever run."""
