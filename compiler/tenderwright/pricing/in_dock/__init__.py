"""The account of a docking while it lasts: the contract, what changes it, and what it will come to."""
