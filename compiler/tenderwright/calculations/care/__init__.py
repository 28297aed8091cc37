"""Care between dockings: potentials, trends of readings, and when she should come out again."""
