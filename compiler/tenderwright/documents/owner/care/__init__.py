"""The papers of her care between dockings: the care plan, the page for the wheelhouse, and the calendar."""
