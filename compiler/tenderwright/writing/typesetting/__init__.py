"""What turns the parts of an edition into one tagged PDF: each part on its own, then all joined."""
