"""The comparing stage: what changed between two compiled packages, told so that nothing is left out."""
