"""Shape: check plain data against the JSON Schemas, with notices in our own words."""
