"""Formulas for the comparison of bids: quantities at which two are equal, and how likely it is to pass them."""
