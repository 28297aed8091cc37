"""The tow plan: a paper of its own for tower, insurer and harbour."""
