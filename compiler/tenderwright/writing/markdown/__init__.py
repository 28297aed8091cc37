"""Editions as CommonMark with the tables that GitHub added to it."""
