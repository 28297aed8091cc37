"""The package of the tender that follows a closed one: what goes along, what is asked again, and the archive."""
