"""Cost: three-point estimates, correlated trials, escalation, man-hours priced, growth and classes of estimate."""
