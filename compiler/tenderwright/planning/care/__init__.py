"""The care between dockings: what is done how often, what falls due once, and what is set aside."""
