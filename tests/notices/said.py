"""What every sentence of a notice keeps to, whatever it is about."""

from __future__ import annotations

import re
from collections.abc import Iterable

from tenderwright.notices import Notice
from tenderwright.reading.yaml_file import read_yaml


def well_said(notices: Iterable[Notice]) -> None:
    """Assert that sentences have no full stop, propose no number as a spelling, and that YAML in hints can be read."""
    for notice in notices:
        for text in (notice.message, *notice.hints, *(note.text for note in notice.notes)):
            assert text == text.strip()
            assert not re.sub(r"`[^`]*`", "", text).endswith("."), text
            assert not re.search(r"did you mean `\d", text), text
        for hint in notice.hints:
            for snippet in re.findall(r"`([^`]*: [^`]*)`", hint):
                assert read_yaml("hint.yaml", f"{snippet}\n")[1] == [], hint
