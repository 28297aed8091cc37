"""Coatings: paint quantity, containers, surface preparation, abrasive and the areas to be coated."""
