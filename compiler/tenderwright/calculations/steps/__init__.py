"""The steps of the ship's calculation: how they are declared, what becomes of them, and how they are run."""
