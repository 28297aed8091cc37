"""The demonstration's yard edition: the same bytes from two processes, and nothing of its owner/ in it."""

from __future__ import annotations

import json

import pytest

from tests.pipeline.contents import texts_in
from tests.pipeline.owner_papers import leaks_in
from tests.pipeline.packages import different, files_of, marram
from tests.pipeline.two import Two, build_twice


@pytest.fixture(scope="module")
def marrams(tmp_path_factory: pytest.TempPathFactory) -> Two:
    base = tmp_path_factory.mktemp("marrams")
    return build_twice(marram(base / "source"), base)


def test_two_processes_in_two_folders_write_the_same_bytes(marrams: Two) -> None:
    plain, guarded = files_of(marrams.plain), files_of(marrams.guarded)
    assert len(plain) > 8
    assert different(plain, guarded) == []


def test_the_manifest_names_the_commit(marrams: Two) -> None:
    manifest = json.loads((marrams.plain / "manifest.json").read_text("utf-8"))
    assert manifest["commit"] == marrams.commit


def test_no_canary_reaches_the_yard(marrams: Two) -> None:
    """Its PDF holds none, since the build without owner/ gave the same bytes; the rest is read."""
    files = files_of(marrams.guarded)
    assert files["specification.pdf"] == (marrams.plain / "specification.pdf").read_bytes()
    rest = {name: content for name, content in files.items() if not name.endswith((".pdf", ".zip"))}
    assert len(marrams.canaries.amounts) > 300
    assert [leak for name, text in texts_in(rest) for leak in leaks_in(name, text, marrams.canaries)] == []
