"""Blocks: how her weight stands on keel and side blocks, and where they stand under the hull."""
