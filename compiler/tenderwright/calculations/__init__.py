"""Calculations: pure kernels on SI floats, declared as methods with formula, source and range."""
