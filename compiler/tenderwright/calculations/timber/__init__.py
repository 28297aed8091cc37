"""Hulls of wood: planking, seams, borings, moisture, fastenings, hog, and the days that planking may stand dry."""
