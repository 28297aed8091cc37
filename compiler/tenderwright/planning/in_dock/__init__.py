"""What an owner can still decide while she is in dock: time, money, and work that may be put off."""
