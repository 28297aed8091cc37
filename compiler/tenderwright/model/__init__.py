"""Model: clean data to frozen dataclasses with quantities read; knows the trade's nouns, no method of calculation."""
