"""Bad input of every kind gets a notice at its place, never a traceback; all in one run; and outputs stay whole."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from zlib import crc32

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tenderwright.cli import main
from tenderwright.commands.build import build_once
from tenderwright.notices import Notice
from tenderwright.pipeline import compile_owner, compile_package, compose_owner, compose_yard, read, stamp_of
from tenderwright.reading.layout import is_ignored
from tenderwright.starter.write import starter_files
from tenderwright.writing.html import screen_page
from tenderwright.writing.pdf import Typesetter
from tests.fixtures.overlay import all_notices_of

from .packages import edit, files_of, starter

RIVETS = "items/320-rivets-renew.yaml"
PACKAGE = "package.yaml"

Found = tuple[str, int, str]
"""Path, line and code of a notice."""


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return starter(tmp_path / "sandling")


def _line(root: Path, path: str, words: str) -> int:
    text = (root / path).read_text("utf-8")
    return text[: text.index(words)].count("\n") + 1


def _found(root: Path) -> list[Found]:
    return [(notice.place.path, notice.place.line, notice.code) for notice in all_notices_of(root)]


def _replaced(path: str, old: str, new: str, code: str, at: str | None = None) -> Callable[[Path], Found]:
    def spoil(root: Path) -> Found:
        edit(root, path, old, new)
        return path, _line(root, path, new if at is None else at), code

    return spoil


def _written(path: str, content: bytes, line: int, code: str) -> Callable[[Path], Found]:
    def spoil(root: Path) -> Found:
        (root / path).parent.mkdir(exist_ok=True)
        (root / path).write_bytes(content)
        return path, line, code

    return spoil


def _bomb() -> bytes:
    """Make nine levels of nine aliases each, a thousand million words if they were written out."""
    levels = ["a0: &a0 [lol]"]
    levels += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 10)]
    return "\n".join(levels).encode()


def _cycle(root: Path) -> Found:
    edit(root, "items/210-hull-wash.yaml", 'depends_on: ["110"]', 'depends_on: ["420"]')
    return "items/420-underwater-shell-coat.yaml", 10, "cycle"


def _cycle_of_itself(root: Path) -> Found:
    edit(root, "items/210-hull-wash.yaml", 'depends_on: ["110"]', 'depends_on: ["210"]')
    return "items/210-hull-wash.yaml", 10, "cycle"


def _gone(path: str) -> Callable[[Path], Found]:
    def spoil(root: Path) -> Found:
        (root / path).unlink()
        return path, 1, "missing-file"

    return spoil


def _folder(path: str) -> Callable[[Path], Found]:
    def spoil(root: Path) -> Found:
        (root / path).unlink()
        (root / path).mkdir()
        (root / path / "inside.yaml").write_text("a: b\n", "utf-8")
        return path, 1, "not-a-file"

    return spoil


def _huge(root: Path) -> Found:
    with (root / RIVETS).open("r+b") as file:
        file.truncate(50_000_000)
    return RIVETS, 1, "too-large"


def _link(target: str, code: str) -> Callable[[Path], Found]:
    def spoil(root: Path) -> Found:
        path = root / "items" / "500-mast-step.yaml"
        path.symlink_to(target)
        return "items/500-mast-step.yaml", 1, code

    return spoil


SPOILT: dict[str, Callable[[Path], Found]] = {
    "bracket left open": _replaced(RIVETS, "strakes: [A, B]", "strakes: [A, B", "yaml-syntax", "boundary_of"),
    "tab in the indent": _replaced(RIVETS, "  side: both", "\tside: both", "yaml-syntax"),
    "quote left open": _replaced(PACKAGE, "ship: Sandling", 'ship: "Sandling', "yaml-syntax", 'where: "'),
    "colon in plain text": _replaced(RIVETS, "title: Rivets, renew", "title: Rivets: renew", "yaml-syntax"),
    "key twice": _replaced(RIVETS, "phase: dry", "phase: dry\nitem: 320", "duplicate-key", "item: 320\nsystem"),
    "unit of something else": _replaced(PACKAGE, "valid: 120 d", "valid: 120 m", "wrong-dimension"),
    "unit unknown": _replaced(PACKAGE, "valid: 120 d", "valid: 120 florps", "bad-quantity"),
    "unit missing": _replaced("vessel/particulars.yaml", "beam: 5.44 m", "beam: 5.44", "wrong-type"),
    "unit of several meanings": _replaced("vessel/particulars.yaml", "112 t", "112 ton", "ambiguous-unit"),
    "dead reference in text": _replaced(RIVETS, "(strake:A)", "(strake:Q)", "dead-reference"),
    "dead reference in a list": _replaced(RIVETS, "strakes: [A, B]", "strakes: [A, Q]", "dead-reference"),
    "dead value": _replaced(
        "items/140-bilge-oil-tank-clean.yaml", "bilge-oil.volume", "bilge.volume", "dead-reference"
    ),
    "kind of reference unknown": _replaced(RIVETS, "(strake:A)", "(plank:A)", "dead-reference"),
    "items in a circle": _cycle,
    "item after itself": _cycle_of_itself,
    "package.yaml missing": _gone(PACKAGE),
    "frames missing": _gone("vessel/frames.yaml"),
    "folder for a file": _folder(RIVETS),
    "folder for a needed file": _folder(PACKAGE),
    "fifty megabytes": _huge,
    "deep nesting": _written("vessel/appendages.yaml", b"a: " + b"[" * 5000 + b"]" * 5000, 1, "yaml-syntax"),
    "deep nesting of lines": _written(
        "vessel/appendages.yaml", b"\n".join(b" " * n + b"a:" for n in range(900)), 25, "too-deep"
    ),
    "aliases without end": _written("vessel/appendages.yaml", _bomb(), 1, "yaml-feature"),
    "alias to nothing": _replaced(PACKAGE, "ship: Sandling", "ship: *sandling", "yaml-feature"),
    "tag that makes objects": _replaced(
        PACKAGE, "ship: Sandling", "ship: !!python/object/apply:os.system [true]", "yaml-feature"
    ),
    "merge key": _replaced(RIVETS, "item: 320", "<<: {item: 320}", "yaml-feature"),
    "two documents": _replaced(RIVETS, "heritage:", "---\nheritage:", "yaml-feature", "---\nheritage"),
    "Latin-1": _written("clauses/03-masts.md", b"# M\xe2t\n", 1, "not-utf8"),
    "UTF-16": _written("clauses/03-masts.md", "# Masts\n".encode("utf-16"), 1, "not-utf8"),
    "cut within a character": _written("clauses/03-masts.md", b"# Masts\n\nn\xc3", 3, "not-utf8"),
    "not a number": _replaced("vessel/zones.yaml", "area: 7.6 m2", "area: .nan m2", "bad-quantity"),
    "NaN for money": _replaced("owner/rates.yaml", "rate: 650", "rate: .nan", "wrong-type"),
    "infinity": _replaced("vessel/particulars.yaml", "built: 1927", "built: .inf", "wrong-type"),
    "quantity below zero": _replaced(RIVETS, "quantity: 40 each", "quantity: -40 each", "bad-quantity"),
    "length below zero": _replaced("vessel/particulars.yaml", "beam: 5.44 m", "beam: -5.44 m", "bad-quantity"),
    "rate below zero": _replaced("owner/rates.yaml", "rate: 650", "rate: -650", "bad-money"),
    "huge integer": _replaced("vessel/particulars.yaml", "built: 1927", f"built: {'9' * 400}", "wrong-type"),
    "huge number of digits": _replaced("owner/rates.yaml", "rate: 650", f"rate: {'9' * 5000}", "wrong-type"),
    "huge exponent": _replaced("vessel/particulars.yaml", "beam: 5.44 m", "beam: 1e999999999 m", "bad-quantity"),
    "year zero": _replaced(PACKAGE, "closing: 2027-12-10", "closing: 0000-00-00", "bad-date"),
    "day that is not": _replaced(PACKAGE, "closing: 2027-12-10", "closing: 2027-02-30", "bad-date"),
    "NUL": _replaced(RIVETS, "Rivets, renew", "Rivets\0 renew", "yaml-syntax"),
    "control character": _replaced(RIVETS, "Rivets, renew", "Rivets\x07 renew", "yaml-syntax"),
    "key that is a list": _replaced(RIVETS, "item: 320", "? [a, b]\n: 1\nitem: 320", "yaml-feature", "? [a, b]"),
    "key that is a mapping": _replaced(RIVETS, "item: 320", "? {a: b}\n: 1\nitem: 320", "yaml-feature", "? {a: b}"),
    "list for a mapping": _written("vessel/frames.yaml", b"- a\n- b\n", 1, "wrong-type"),
    "word for a mapping": _written("vessel/tanks.yaml", b"tanks\n", 1, "wrong-type"),
    "empty file": _written("vessel/tanks.yaml", b"", 1, "wrong-type"),
    "file of comments": _written("vessel/tanks.yaml", b"# nothing\n# here\n", 1, "wrong-type"),
    "empty item": _written("items/500-mast-step.yaml", b"", 1, "wrong-type"),
    "empty owner's file": _written("owner/rates.yaml", b"", 1, "wrong-type"),
    "link out of the package": _link("/etc/hostname", "outside-package"),
    "link up and out": _link("../../elsewhere.yaml", "outside-package"),
    "link to itself": _link("500-mast-step.yaml", "not-a-file"),
    "link to nothing": _link("501-gone.yaml", "no-such-file"),
    "name of no file": _written("items/mast.yml", b"item: 500\n", 1, "unknown-file"),
}


@pytest.mark.parametrize("kind", SPOILT)
def test_it_is_reported_at_its_place(kind: str, root: Path) -> None:
    wanted = SPOILT[kind](root)
    found = _found(root)
    assert wanted in found, found


def test_loops_of_links_end(root: Path) -> None:
    (root / "items" / "more").symlink_to(root / "items", target_is_directory=True)
    (root / "clauses" / "one").symlink_to("two")
    (root / "clauses" / "two").symlink_to("one")
    assert {path for path, _, _ in _found(root)} == {"items/more", "clauses/one", "clauses/two"}


@pytest.mark.skipif(os.geteuid() == 0, reason="root reads everything")
def test_a_file_that_may_not_be_read_is_reported(root: Path) -> None:
    (root / RIVETS).chmod(0)
    assert (RIVETS, 1, "unreadable-file") in _found(root)


def test_a_file_that_fails_to_be_read_is_reported(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    really = Path.read_bytes

    def fail(path: Path) -> bytes:
        if path.name == "320-rivets-renew.yaml":
            raise PermissionError(13, "Permission denied")
        return really(path)

    monkeypatch.setattr(Path, "read_bytes", fail)
    assert (RIVETS, 1, "unreadable-file") in _found(root)


def test_ten_thousand_lines_are_read_and_a_mistake_at_the_end_found(root: Path) -> None:
    path = root / "items" / "320-rivets-renew.yaml"
    head = path.read_text("utf-8")
    lines = "".join(
        f"  - {{ line: {chr(97 + n // 26 % 26)}{chr(97 + n % 26)}, text: Rivet {n}, price: lump }}\n"
        for n in range(650)
    )
    filler = "".join(f"# remark {n}\n" for n in range(9400))
    path.write_text(f"{head}{lines}{filler}depth: 3 m\n", "utf-8")
    count = path.read_text("utf-8").count("\n")
    assert count > 10_000
    assert (RIVETS, count, "unknown-key") in _found(root)


def test_three_mistakes_in_three_files_give_three_notices_in_one_run(root: Path) -> None:
    wanted = [
        _replaced(RIVETS, "strakes: [A, B]", "strakes: [A, Q]", "dead-reference")(root),
        _replaced("vessel/zones.yaml", "area: 7.6 m2", "area: 7.6 kg", "wrong-dimension")(root),
        _replaced("owner/rates.yaml", "rate: 650", "rate: -650", "bad-money")(root),
    ]
    assert sorted(_found(root)) == sorted(wanted)


def test_a_broken_file_does_not_bring_mistakes_of_other_files_with_it(root: Path) -> None:
    _replaced(RIVETS, "strakes: [A, B]", "strakes: [A, B", "yaml-syntax")(root)
    assert [(path, code) for path, _, code in _found(root)] == [(RIVETS, "yaml-syntax")]


def test_nothing_but_rubbish_ends_in_notices(tmp_path: Path) -> None:
    for number, path in enumerate(
        ["package.yaml", "vessel/tanks.yaml", "items/1-a.yaml", "surveys/a.csv", "clauses/a.md"]
    ):
        (tmp_path / path).parent.mkdir(exist_ok=True)
        (tmp_path / path).write_bytes(bytes(range(number, 120)) * 3)
    assert {"package.yaml", "vessel/tanks.yaml", "items/1-a.yaml"} <= {path for path, _, _ in _found(tmp_path)}


def test_an_empty_folder_ends_in_notices(tmp_path: Path) -> None:
    assert {code for _, _, code in _found(tmp_path)} == {"missing-file"}


# Mutations of any file.

_SOURCES = {name: path for name, path in starter_files().items() if not is_ignored(name)}
_WORDS = sorted({word for path in _SOURCES.values() for word in path.read_text("utf-8").split()})
_ODD = [
    "null",
    "-1",
    "0",
    ".nan",
    "1e400",
    "[]",
    "{}",
    "''",
    "=",
    "\x00",
    "é",
    "[[",
    ":",
    "|",
    "%",
    "&a",
    "*a",
    "!!x",
    "<item:999>",
    "<value:x>",
    "2028-13-45",
]
_ODD += ["9" * 30, "\t", "-5 m", "1e9 m", "Fr 999", "- x", ": ", " #4", "\u2028", "\ufeff"]
_pieces = st.sampled_from(_WORDS) | st.sampled_from(_ODD) | st.text(max_size=4)


@st.composite
def _mutations(draw: st.DrawFn) -> tuple[str, str]:
    """Draw a file of the starter and a text for it that was changed in one to four places."""
    name = draw(st.sampled_from(sorted(_SOURCES)))
    lines = _SOURCES[name].read_text("utf-8").split("\n")
    for _ in range(draw(st.integers(1, 4))):
        at, other = (draw(st.integers(0, len(lines) - 1)) for _ in range(2))
        column = draw(st.integers(0, len(lines[at])))
        how = draw(st.sampled_from(["delete", "double", "replace", "cut", "insert", "value", "end"]))
        if how == "delete" and len(lines) > 1:
            del lines[at]
        elif how == "double":
            lines.insert(other, lines[at])
        elif how == "replace":
            lines[at] = lines[other]
        elif how == "cut":
            lines[at] = lines[at][:column] + lines[at][column + 1 :]
        elif how == "insert":
            lines[at] = lines[at][:column] + draw(_pieces) + lines[at][column:]
        elif how == "value":
            lines[at] = lines[at].partition(": ")[0] + ": " + draw(_pieces)
        else:
            lines = lines[: at + 1]
    return name, "\n".join(lines)


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return starter(tmp_path_factory.mktemp("mutated") / "sandling")


@settings(max_examples=60)
@given(mutation=_mutations())
def test_no_mutation_of_any_file_raises_and_every_notice_has_a_place(mutation: tuple[str, str], shared: Path) -> None:
    name, text = mutation
    before = (shared / name).read_bytes()
    content = text.encode("utf-8", "surrogatepass")
    (shared / name).write_bytes(content)
    try:
        files = read(shared)
        compiled = compile_package(files)
        owner = compile_owner(files, compiled)
        for notice in [*compiled.notices, *owner.notices]:
            _require_place(notice, shared, files.texts)
        if compiled.sound and crc32(content) % 6 == 0:
            screen_page(compose_yard(compiled, stamp_of(compiled))[0])
            if owner.sound and owner.estimate is not None:
                screen_page(compose_owner(compiled, owner, stamp_of(compiled))[0])
    finally:
        (shared / name).write_bytes(before)


def _require_place(notice: Notice, root: Path, texts: dict[str, str]) -> None:
    path, place = root / notice.place.path, notice.place
    if not path.is_file():
        assert notice.code == "missing-file", notice
        return
    lines = texts[place.path].split("\n") if texts[place.path] else [""]
    assert 1 <= place.line <= len(lines), notice
    assert 1 <= place.column <= len(lines[place.line - 1]) + 1, notice


# What is in build/ stays whole.


def test_a_failing_build_leaves_the_former_build_untouched(root: Path, tmp_path: Path, typesetter: Typesetter) -> None:
    out = tmp_path / "build"
    assert build_once(root, out, "yard", typesetter) == 0
    before = files_of(out)
    assert before
    _replaced(RIVETS, "strakes: [A, B]", "strakes: [A, Q]", "dead-reference")(root)
    assert build_once(root, out, None, typesetter) == 1
    assert files_of(out) == before
    assert [path.name for path in out.iterdir()] == ["yard"]


def test_a_mistake_of_the_owner_stops_both_editions_together(
    root: Path, tmp_path: Path, typesetter: Typesetter
) -> None:
    edit(root, "owner/rates.yaml", "rate: 650", "rate: 6,50")
    assert build_once(root, tmp_path / "build", None, typesetter) == 1
    assert not (tmp_path / "build").exists()


@pytest.mark.parametrize("link", ["photo.jpg", "#nowhere"])
def test_a_link_in_text_that_leads_nowhere_ends_in_words_not_in_a_traceback(
    link: str, root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    edit(root, RIVETS, "(strake:A).", f"(strake:A). See [the log]({link}).")
    assert main(["build", str(root), "--only", "yard", "--out", str(root / "build")]) in (1, 2)
    err = capsys.readouterr().err
    assert err
    assert "Traceback" not in err
    assert not (root / "build").exists()


def test_a_link_in_text_that_leads_nowhere_has_a_notice_at_its_place(root: Path) -> None:
    edit(root, RIVETS, "(strake:A).", "(strake:A). See [the log](photo.jpg).")
    assert (RIVETS, _line(root, RIVETS, "photo.jpg")) in {(path, line) for path, line, _ in _found(root)}


def test_two_hold_points_of_one_name_have_a_notice(root: Path) -> None:
    hold = "holds:\n  - { hold: H1, at: Plate up, by: [owner], notice: 4 h, accept: Straight to 3 mm. }\n"
    edit(root, "items/420-underwater-shell-coat.yaml", "holds:\n", hold)
    assert "duplicate-name" in {code for _, _, code in _found(root)}


def test_two_lines_of_one_letter_have_a_notice(root: Path) -> None:
    edit(root, "items/130-fire-watch-provide.yaml", "lines:\n", "lines:\n  - { line: a, text: Hoses, price: lump }\n")
    assert "duplicate-name" in {code for _, _, code in _found(root)}


@pytest.mark.parametrize("escape", ["\\0", "\\a", "\\e", "\\uFFFE"])
def test_a_control_character_put_in_by_an_escape_has_a_notice(escape: str, root: Path) -> None:
    edit(root, RIVETS, "title: Rivets, renew", f'title: "Rivets{escape}, renew"')
    assert RIVETS in {path for path, _, _ in _found(root)}


@pytest.mark.parametrize("end", ["\u0085", "\u2028", "\u2029", "\r", "\r\n"])
def test_every_line_end_of_the_parser_counts_as_a_line(end: str, root: Path) -> None:
    edit(root, RIVETS, "title: ", f"{end}titel: ")
    files = read(root)
    for notice in compile_package(files).notices:
        _require_place(notice, root, files.texts)
