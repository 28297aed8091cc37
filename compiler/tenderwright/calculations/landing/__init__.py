"""Landing: she takes the keel blocks as the water falls, her upthrust, drafts and stability."""
