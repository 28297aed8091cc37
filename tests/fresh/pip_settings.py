"""Writes pip's settings on this machine, from `pip config list`, as one file; prints the paths that they name."""

from __future__ import annotations

import sys
from ast import literal_eval
from pathlib import Path

CERTIFICATES = "/etc/ssl/certs/ca-certificates.crt"
"""Where a Debian system keeps its certificates; those of this machine are copied there."""

settings: dict[str, str] = {}
for line in sys.stdin:
    key, _, value = line.strip().partition("=")
    place, _, name = key.rpartition(".")
    if place == ":env:" or name not in settings:
        settings[name] = CERTIFICATES if name == "cert" else literal_eval(value)

Path(sys.argv[1]).write_text("\n".join(["[global]", *(f"{name} = {value}" for name, value in settings.items()), ""]))
words = [word.removeprefix("file://") for value in settings.values() for word in value.split()]
paths = dict.fromkeys(word.removesuffix("/simple") for word in words if word.startswith("/") and word != CERTIFICATES)
print("\n".join(path for path in paths if Path(path).exists()))
