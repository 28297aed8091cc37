"""The demonstration's yard edition: the same bytes from two processes, and nothing of its owner/ in it."""

from __future__ import annotations

import json

import yaml

from .conftest import Two
from .contents import texts_in
from .packages import MARRAM, different, files_of
from .test_canary import leaks_in


def test_two_processes_in_two_folders_write_the_same_bytes(two_marrams: Two) -> None:
    plain, guarded = files_of(two_marrams.plain), files_of(two_marrams.guarded)
    assert len(plain) > 8
    assert different(plain, guarded) == []


def test_the_manifest_names_the_commit(two_marrams: Two) -> None:
    manifest = json.loads((two_marrams.plain / "manifest.json").read_text("utf-8"))
    assert manifest["commit"] == two_marrams.commit


def test_no_canary_of_the_demonstration_reaches_the_yard(two_marrams: Two) -> None:
    """Its PDF holds none, since the build without owner/ gave the same bytes; the rest is read."""
    files = files_of(two_marrams.guarded)
    assert files["specification.pdf"] == (two_marrams.plain / "specification.pdf").read_bytes()
    rest = {name: content for name, content in files.items() if not name.endswith((".pdf", ".zip"))}
    assert len(two_marrams.canaries.amounts) > 300
    assert [leak for name, text in texts_in(rest) for leak in leaks_in(name, text, two_marrams.canaries)] == []


def test_the_owners_own_words_and_amounts_of_the_demonstration_do_not_reach_the_yard(two_marrams: Two) -> None:
    page = (two_marrams.plain / "specification.html").read_text("utf-8")
    form = dict(texts_in({"price-form.xlsx": (two_marrams.plain / "price-form.xlsx").read_bytes()}))
    sold = _owners_words()
    assert len(sold) > 20
    for words in sold:
        assert words not in page
        assert all(words not in text for text in form.values())


def _owners_words() -> list[str]:
    """Give texts of the demonstration's owner/ that are long enough to be nobody else's."""
    found: list[str] = []
    for path in sorted((MARRAM / "owner").rglob("*.yaml")):
        waiting = [yaml.safe_load(path.read_text("utf-8"))]
        while waiting:
            one = waiting.pop()
            if isinstance(one, dict):
                waiting += [below for key, below in one.items() if key != "ask"]  # the owner's own published questions
            elif isinstance(one, list):
                waiting += one
            elif isinstance(one, str) and len(one) > 30:
                found.append(one.strip())
    return found
