"""Writes editions and price forms as files: this stage renders, it decides nothing."""
