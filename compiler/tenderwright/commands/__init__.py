"""Commands: parse arguments, run the pipeline, and say what came of it."""
