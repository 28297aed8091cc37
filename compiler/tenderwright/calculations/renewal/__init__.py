"""Renewal of plate: outlines of inserts, their steel and rivets, and the part that is contingent."""
