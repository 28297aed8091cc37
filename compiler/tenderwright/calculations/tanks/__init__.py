"""Tanks: liquid in a tank from a sounding, its weight, centre and free surface; densities of waters and
liquids."""
