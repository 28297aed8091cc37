"""Coating conditions: dew point, steel temperature, salts, dust, overcoating and workable hours."""
