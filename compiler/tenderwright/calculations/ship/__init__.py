"""The ship's own figures: the model's quantities given to the methods, and their values kept in the record."""
