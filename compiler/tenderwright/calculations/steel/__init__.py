"""Steel: mass of plate and section, pound-plate names, corrosion rate, rivets and man-hours of renewal."""
