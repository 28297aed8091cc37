"""Trade checks of the owner's papers: one rule, one file; they see what no yard sees."""
