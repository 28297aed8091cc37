"""The inspection and test plan and the register of openings: what they hold, and what is still open in them."""
