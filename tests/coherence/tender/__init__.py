"""Gross mistakes in the data of the tender, the owner and the earlier dockings."""
