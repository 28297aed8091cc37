"""How sure a figure is: standard uncertainty to first order, and what drives it."""
