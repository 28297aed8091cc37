"""Model: clean data to frozen dataclasses with quantities read; knows the trade's nouns and no method of calculation."""
