"""Hostile workbooks are refused before anything parses them; harmless ones are let through."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from tenderwright.reading.workbook import guard as guarding
from tenderwright.reading.workbook import unpack as unpacking
from tenderwright.reading.workbook.guard import guard, look_through
from tenderwright.reading.workbook.refusal import Refusal

from . import hostile

LAUGHS = '<!DOCTYPE x [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;">]>'
OUTSIDE = '<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/hostname">]>'


def _zeros(size: int) -> bytes:
    return hostile.with_member("xl/media/image1.png", bytes(size))


def _link() -> bytes:
    output = io.BytesIO(hostile.harmless())
    with zipfile.ZipFile(output, "a") as packed:
        member = zipfile.ZipInfo("xl/media/link.png")
        member.create_system, member.external_attr = 3, 0o120777 << 16
        packed.writestr(member, "../../secret")
    return output.getvalue()


def _twice() -> bytes:
    return hostile.pack({**hostile.members(hostile.harmless()), "XL/Workbook.xml": b"<a/>"})


def _many() -> bytes:
    more = {f"xl/media/image{n}.png": b"" for n in range(unpacking.MAX_MEMBERS)}
    return hostile.pack({**hostile.members(hostile.harmless()), **more})


UNSAFE: dict[str, tuple[Callable[[], bytes], str]] = {
    "macros": (lambda: hostile.with_member("xl/vbaProject.bin", b"\xd0\xcf"), "macros"),
    "macro type": (
        lambda: hostile.changed(
            hostile.TYPES,
            "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml",
            "application/vnd.ms-excel.sheet.macroEnabled.main+xml",
        ),
        "macros",
    ),
    "macro sheet": (lambda: hostile.with_member("xl/macrosheets/sheet1.xml", b"<a/>"), "macros"),
    "macro type of a part": (lambda: hostile.of_type("application/vnd.ms-excel.intlmacrosheet+xml"), "macros"),
    "ribbon": (lambda: hostile.with_member("customUI/customUI.xml", b"<a/>"), "macros"),
    "macro name": (
        lambda: hostile.changed(
            hostile.BOOK,
            "<definedNames/>",
            '<definedNames><definedName name="_xlnm.Auto_Open">A1</definedName></definedNames>',
        ),
        "macros",
    ),
    "control": (lambda: hostile.with_member("xl/activeX/activeX1.bin"), "controls"),
    "control on a sheet": (
        lambda: hostile.changed(
            hostile.SHEET, "</sheetData>", '</sheetData><controls><control shapeId="1"/></controls>'
        ),
        "a control",
    ),
    "object": (lambda: hostile.with_member("xl/embeddings/oleObject1.bin"), "embedded objects"),
    "object by relationship": (lambda: hostile.related("oleObject", "objects/1.bin"), "embedded objects"),
    "package": (lambda: hostile.related("package", "objects/1.docx"), "embedded objects"),
    "external link": (
        lambda: hostile.with_member("xl/externalLinks/externalLink1.xml", b"<a/>"),
        "links to other files",
    ),
    "external relationship": (
        lambda: hostile.related("image", "http://example.org/1.png", "External"),
        "links to other",
    ),
    "connections": (lambda: hostile.with_member("xl/connections.xml", b"<a/>"), "data connections"),
    "query table": (lambda: hostile.with_member("xl/queryTables/queryTable1.xml", b"<a/>"), "data connections"),
    "DDE": (lambda: hostile.with_formula("cmd|'/c calc'!A0"), "a DDE link"),
    "another workbook": (lambda: hostile.with_formula("'[1]Sheet 1'!A1*2"), "a link to another workbook"),
    "call": (lambda: hostile.with_formula("call (&quot;Kernel32&quot;,&quot;WinExec&quot;)"), "calls out"),
    "web": (lambda: hostile.with_formula("WEBSERVICE(&quot;http://example.org&quot;)"), "calls out"),
    "DDE in a name": (
        lambda: hostile.changed(
            hostile.BOOK,
            "<definedNames/>",
            "<definedNames><definedName name=\"x\">cmd|'/c'!A0</definedName></definedNames>",
        ),
        "a DDE link",
    ),
    "entities": (lambda: hostile.declaring(hostile.SHEET, LAUGHS), "document type or entities"),
    "outside entity": (lambda: hostile.declaring(hostile.BOOK, OUTSIDE), "document type or entities"),
    "entities in UTF-16": (lambda: hostile.declaring(hostile.BOOK, LAUGHS, "utf-16"), "document type or entities"),
    "entities in a relationship": (lambda: hostile.declaring(hostile.RELATIONS, LAUGHS), "document type or entities"),
    "entities in a drawing": (
        lambda: hostile.with_member("xl/drawings/vmlDrawing1.vml", b"<!DOCTYPE xml><x/>"),
        "document type or entities",
    ),
    "deep nesting": (
        lambda: hostile.with_member("xl/deep.xml", b"<a>" * 500 + b"</a>" * 500),
        "nested deeper than 100",
    ),
    "one member too large": (lambda: _zeros(unpacking.MAX_MEMBER_BYTES + 1), "times its size"),
    "ratio": (lambda: _zeros(2_000_000), "more than 200 times its size"),
    "members": (_many, "members; at most 200"),
    "dimension": (
        lambda: hostile.changed(hostile.SHEET, '<dimension ref="A1:B1"/>', '<dimension ref="A1:XFD1048576"/>'),
        "beyond 20,000 rows",
    ),
    "far cell": (
        lambda: hostile.with_cells('<sheetData><row r="1"><c r="XFD1"><v>1</v></c></row></sheetData>'),
        "beyond 20,000 rows",
    ),
    "far row": (lambda: hostile.with_cells('<sheetData><row r="99999999999"/></sheetData>'), "more than the format"),
    "far row without addresses": (
        lambda: hostile.with_cells('<sheetData><row r="1048576"><c><v>1</v></c></row></sheetData>'),
        "20,000 rows are read",
    ),
    "merged cells": (
        lambda: hostile.with_cells('<sheetData/><mergeCells><mergeCell ref="A1:CV20000"/></mergeCells>'),
        "merged cells of the workbook cover more",
    ),
    "name upwards": (lambda: hostile.with_member("../xl/other.xml", b"<a/>"), "leads out"),
    "name from the root": (lambda: hostile.with_member("/etc/other.xml", b"<a/>"), "leads out"),
    "name of a drive": (lambda: hostile.with_member("C:/other.xml", b"<a/>"), "leads out"),
    "name with a backslash": (lambda: hostile.with_member("xl\\other.xml", b"<a/>"), "leads out"),
    "name twice": (_twice, "hides another"),
    "link": (_link, "is a link"),
}

UNREADABLE: dict[str, tuple[Callable[[], bytes], str]] = {
    "text": (lambda: b"line,rate\n420.a,12.50\n", "not a workbook, or is a damaged one"),
    "nothing": (lambda: b"", "not a workbook, or is a damaged one"),
    "old kind": (lambda: b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600), "old binary kind"),
    "encrypted": (
        lambda: b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(60) + "EncryptedPackage".encode("utf-16-le"),
        "encrypted",
    ),
    "another archive": (lambda: hostile.pack({"notes.txt": b"hello"}), "a zip archive, but no workbook"),
    "OpenDocument": (
        lambda: hostile.pack({"mimetype": b"application/vnd.oasis.opendocument.spreadsheet"}),
        "OpenDocument",
    ),
    "text document": (lambda: hostile.with_member("word/document.xml", b"<a/>"), "text document"),
    "binary workbook": (lambda: hostile.with_member("xl/workbook.bin"), "binary kind"),
    "cut short": (lambda: hostile.harmless()[:-200], "not a workbook, or is a damaged one"),
    "damaged member": (lambda: _spoilt(hostile.harmless()), "not a workbook, or is a damaged one"),
    "not well formed": (lambda: hostile.with_cells("<sheetData><row></sheetData>"), "not well formed"),
    "no address": (
        lambda: hostile.with_cells('<sheetData><row r="1"><c r="here"><v>1</v></c></row></sheetData>'),
        "not the address of a cell",
    ),
    "no row": (lambda: hostile.with_cells('<sheetData><row r="x"/></sheetData>'), "not the number of a row"),
}


def _spoilt(data: bytes) -> bytes:
    """Change a byte in the packed content of the first member, so that its checksum is wrong."""
    with zipfile.ZipFile(io.BytesIO(data)) as packed:
        first = packed.infolist()[0]
    at = first.header_offset + 30 + len(first.filename) + first.compress_size // 2
    return data[:at] + bytes([data[at] ^ 0x55]) + data[at + 1 :]


def _put(folder: Path, data: bytes) -> Path:
    file = folder / "returned.xlsx"
    file.write_bytes(data)
    return file


@pytest.mark.parametrize("name", UNSAFE)
def test_what_may_do_harm_is_refused(name: str, tmp_path: Path) -> None:
    make, words = UNSAFE[name]
    found, (notice,) = guard(_put(tmp_path, make()))
    assert found is None
    assert (notice.code, notice.severity) == ("unsafe-workbook", "error")
    assert words in notice.message
    assert notice.place.path == str(tmp_path / "returned.xlsx")


@pytest.mark.parametrize("name", UNREADABLE)
def test_what_is_no_workbook_is_refused(name: str, tmp_path: Path) -> None:
    make, words = UNREADABLE[name]
    found, (notice,) = guard(_put(tmp_path, make()))
    assert found is None
    assert notice.code == "unreadable-workbook"
    assert words in notice.message


def test_sizes_are_measured_over_all_members(monkeypatch: pytest.MonkeyPatch) -> None:
    data = hostile.with_member("xl/media/image1.png", bytes(range(256)) * 100)
    monkeypatch.setattr(unpacking, "MAX_TOTAL_BYTES", 20_000)
    with pytest.raises(Refusal, match="the workbook unpacks to more than"):
        look_through("x.xlsx", data)


def test_a_member_is_measured_while_it_is_read(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(unpacking, "MAX_MEMBER_BYTES", 100_000)
    with pytest.raises(Refusal, match="unpacks to more than 0 MB"):
        look_through("x.xlsx", hostile.with_member("xl/media/image1.png", bytes(range(256)) * 1000))


def test_cells_are_counted_over_all_sheets(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(guarding, "MAX_CELLS", 1)
    with pytest.raises(Refusal, match="more than 1 cells"):
        look_through("x.xlsx", hostile.harmless())


def test_a_declared_size_that_lies_is_no_way_in() -> None:
    data = hostile.with_member("xl/media/image1.png", bytes(5_000))
    short = data.replace((5_000).to_bytes(4, "little"), (10).to_bytes(4, "little"))
    assert short != data
    with pytest.raises(Refusal) as refused:
        look_through("x.xlsx", short)
    assert refused.value.code == "unreadable-workbook"


def test_a_file_that_is_too_large_is_not_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(guarding, "MAX_FILE_BYTES", 1_000)
    found, (notice,) = guard(_put(tmp_path, hostile.harmless()))
    assert (found, notice.code) == (None, "too-large")


@pytest.mark.parametrize(
    ("name", "code", "words"),
    [(".", "not-a-file", "is a folder"), ("none.xlsx", "no-such-file", "does not exist")],
)
def test_what_is_no_file_is_told(name: str, code: str, words: str, tmp_path: Path) -> None:
    found, (notice,) = guard(tmp_path / name)
    assert (found, notice.code) == (None, code)
    assert words in notice.message


def test_a_harmless_workbook_is_let_through(tmp_path: Path) -> None:
    file = _put(tmp_path, hostile.harmless())
    found, notices = guard(file)
    assert notices == []
    assert found is not None
    assert found.data == file.read_bytes()
    assert len(found.sha256) == 64


@pytest.mark.parametrize(
    "make",
    [
        lambda: hostile.related("hyperlink", "https://example.org/", "External"),
        lambda: hostile.with_formula("IF(A2=&quot;a|b [1]x!&quot;,'A|B'!A1,Table1[Rate])"),
        lambda: hostile.with_cells('<sheetData><row r="1"/><row r="1048576" hidden="1"/></sheetData>'),
        lambda: hostile.with_member("xl/printerSettings/printerSettings1.bin", b"\x00\x01"),
        lambda: hostile.with_member("xl/media/image1.png", b"\x89PNG"),
    ],
    ids=["link of a cell", "text that only looks so", "empty last row", "printer", "picture"],
)
def test_what_programs_add_without_harm_is_let_through(make: Callable[[], bytes]) -> None:
    assert look_through("x.xlsx", make()).path == "x.xlsx"
