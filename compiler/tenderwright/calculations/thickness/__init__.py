"""Thickness readings: diminution, limits, plates, pitting, rate of loss and forecast."""
