"""Editions as Word documents, in styles only: what they look like stands in `template/`."""
