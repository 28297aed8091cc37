"""Trade checks: rules of the trade that a package may break, one rule to a file."""
