"""A first draft of the findings of a docking: what is known already, with `todo` for what only the dock can tell."""
