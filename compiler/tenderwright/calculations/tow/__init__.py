"""The tow of a dead ship: what it takes to pull her, the gear, her lights and alarms, and water that comes in."""
