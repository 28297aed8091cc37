"""Further ships than the demonstration, as unlike it as can be."""
