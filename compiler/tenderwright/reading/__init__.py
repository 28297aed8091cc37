"""Read: files to plain data with a side table of places; the only stage that touches the package's files."""
