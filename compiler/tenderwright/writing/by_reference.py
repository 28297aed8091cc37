"""What stands in JSON more than once is written where it first stands, and named from there on."""

from __future__ import annotations

import json
from typing import Any

REFERENCE = "$ref"
"""The key of a record that stands for what is written elsewhere: `#` and a JSON pointer to it (RFC 6901)."""
LEAST = 200
"""Lists and records shorter than this, in characters, are written again: a name would say less."""


class Written:
    """The lists and records that were written, each with the place where it stands."""

    def __init__(self) -> None:
        self._places: dict[str, str] = {}

    def once(self, data: Any, *place: str | int) -> Any:
        """Give data that is to stand at a place, its lists and records that stand before it named by where they do."""
        if not isinstance(data, (list, dict)):
            return data
        text = json.dumps(data)
        if len(text) >= LEAST:
            if text in self._places:
                return {REFERENCE: self._places[text]}
            self._places[text] = f"#/{'/'.join(map(_step, place))}"
        if isinstance(data, list):
            return [self.once(entry, *place, number) for number, entry in enumerate(data)]
        return {key: self.once(entry, *place, key) for key, entry in data.items()}


def _step(name: str | int) -> str:
    return str(name).replace("~", "~0").replace("/", "~1")
