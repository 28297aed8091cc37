"""What must be done first is named by the item that does it, or by what `tenderwright add` has for it."""

from __future__ import annotations

import pytest

from tenderwright.pipeline import compile_package
from tenderwright.reading.package import Files
from tenderwright.starter.items import entries
from tests.model.packages import change

BILGE = "items/140-bilge-oil-tank-clean.yaml"
WASH = "items/210-hull-wash.yaml"
COAT = "items/420-underwater-shell-coat.yaml"


def hints(files: Files, code: str) -> set[tuple[str, ...]]:
    return {notice.hints for notice in compile_package(files).notices if notice.code == code}


def test_an_item_of_the_package_is_named(starter: Files) -> None:
    alone = change(starter, COAT, 'depends_on: ["210", "320"]', 'depends_on: ["110"]')
    wanted = ('write "210", which does `tests coating for lead or pcb`, in `depends_on`',)
    assert hints(alone, "untested-coating") == {wanted}


@pytest.mark.parametrize(
    ("file", "said", "code", "entry"),
    [
        (WASH, ", tests coating for lead or pcb", "untested-coating", "old-coating-sample"),
        (BILGE, ", certifies gas-free", "unsafe-entry", "gas-free-certificates"),
    ],
)
def test_where_none_does_it_the_catalogue_has_one(starter: Files, file: str, said: str, code: str, entry: str) -> None:
    wanted = (f"`tenderwright add {entry}`, and write its number in `depends_on`",)
    assert hints(change(starter, file, said, ""), code) == {wanted}
    assert said.strip(", ") in entries()[entry].text
