"""Print ratios of times, each taken in one run on one machine: `make bench`.

A ratio says more than a time, since machines differ. Times are those of the processor, which other work lengthens
little. Each figure is the best of several, the two sides taken in turn. Nothing fails here.
"""

from __future__ import annotations

import io
import os
import resource
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass
from pathlib import Path
from time import process_time
from typing import Any

from tests.bench.former import FORMER, Took, compilers, issued
from tests.bench.generate import MARRAM, generate

BARE = "import numpy, yaml, jsonschema, pint, markdown_it"
CHECK = "import sys; from tenderwright.cli import main; main(['check', sys.argv[1]])"


@dataclass(frozen=True)
class Ratio:
    """One row: what over what, both in seconds, and the most that the ratio should be."""

    what: str
    ours: float
    other: float
    target: float

    @property
    def measured(self) -> float:
        """Give the ratio."""
        return self.ours / self.other


def processor() -> float:
    """Give the processor time that finished processes took, s."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def best(count: int, *works: Callable[[], object], clock: Callable[[], float] = process_time) -> list[float]:
    """Time several works in turn, a count of times, and give the best time of each, s."""
    times = [float("inf")] * len(works)
    for _ in range(count):
        for index, work in enumerate(works):
            start = clock()
            work()
            times[index] = min(times[index], clock() - start)
    return times


def python(program: str, *words: str | Path, **settings: str) -> Callable[[], object]:
    """Make a work that runs a program in a Python of its own, which keeps its bytecode as an installed one does."""
    command = [sys.executable, "-c", program, *map(str, words)]
    keeping = {name: text for name, text in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    where = Path(__file__).parents[2]
    return lambda: subprocess.run(command, stdout=subprocess.DEVNULL, check=True, cwd=where, env=keeping | settings)


def start_of_check(folder: Path) -> list[Ratio]:
    """Check the demonstration, over a bare process that imports the libraries, both with their bytecode compiled.

    First with no result kept, then with all: nothing changed that the heavy steps rest on.
    """
    caches = folder / "caches"
    check = python(CHECK, MARRAM, XDG_CACHE_HOME=str(caches))

    def cold() -> None:
        shutil.rmtree(caches, ignore_errors=True)
        check()

    first, again, other = best(9, cold, check, python(BARE), clock=processor)
    return [
        Ratio("`check` of the demonstration / importing its libraries", first, other, 2.6),
        Ratio("the same, where nothing changed / importing its libraries", again, other, 2.0),
    ]


def growth_of_check(folder: Path) -> Ratio:
    """Check 1,000 items, over checking 100."""
    many, few = generate(folder / "many", 1000), generate(folder / "few", 100)
    ours, other = best(3, python(CHECK, many), python(CHECK, few), clock=processor)
    return Ratio("`check` of 1,000 items / of 100 items", ours, other, 12.0)


def composed_yard() -> tuple[Any, int]:
    """Compose the yard edition of the demonstration, with the time it is stamped with."""
    from tenderwright.pipeline import compile_package, compose_yard, read, stamp_of, timestamp

    compiled = compile_package(read(MARRAM))
    state = stamp_of(compiled)
    edition, _ = compose_yard(compiled, state)
    return edition, timestamp(edition, state)


def typesetting() -> Ratio:
    """Typeset the yard edition in one process, over WeasyPrint alone laying out the same final HTML as one file."""
    from weasyprint import CSS, HTML
    from weasyprint.text.fonts import FontConfiguration

    from tenderwright.writing.fetching import build_fetcher
    from tenderwright.writing.html import paper_style, part_html
    from tenderwright.writing.pdf import Typesetter

    edition, time = composed_yard()
    pages = Typesetter(processes=1).typeset(edition, time).first_pages
    parts = [part_html(edition, part, pages, with_style=False) for part in edition.parts]

    def bare() -> None:
        fetcher, fonts = build_fetcher(), FontConfiguration()
        style = CSS(string=paper_style(), url_fetcher=fetcher, font_config=fonts)
        laid = [HTML(string=page, url_fetcher=fetcher).render(font_config=fonts, stylesheets=[style]) for page in parts]
        laid[0].copy([page for document in laid for page in document.pages]).write_pdf(pdf_variant="pdf/ua-1")

    ours, other = best(2, lambda: Typesetter(processes=1).typeset(edition, time), bare)
    return Ratio("PDF of the yard edition / WeasyPrint on the same HTML", ours, other, 1.15)


class _Timed(io.StringIO):
    """What a round says, with the time at which it said that a page is there, and that all is written."""

    def __init__(self) -> None:
        super().__init__()
        self.times: list[float] = []

    def write(self, text: str) -> int:
        if text.startswith(("  page to look at", "  all written")):
            self.times.append(process_time())
        return super().write(text)


def _round(builder: Any) -> tuple[float, float]:
    """Run one round and give its times, s: to the page to look at, and to the end."""
    start = process_time()
    with redirect_stdout(_Timed()) as said, redirect_stderr(io.StringIO()):
        builder.once()
    if len(said.times) != 2:
        raise RuntimeError(f"the package was not built: {said.getvalue()}")
    page, everything = said.times
    return page - start, everything - start


def against_former(folder: Path) -> list[Ratio]:
    """Build, build again and issue, over the same by the compiler as it was at an earlier commit."""
    with compilers(folder) as (ours, former):
        before, first = former.build(), ours.build()
        ours.edit("At once.")
        edited = ours.build()
        ours.commit("An item")
        ours.build()
        ours.commit("Nothing")
        again = ours.build()
        ours.forget()
        mine, others = issued(ours), issued(former)
    said = f"at {FORMER[:7]}"
    return [
        Ratio(f"all papers: processor / {said}", first.processor, before.processor, 0.50),
        Ratio(f"all papers: wall / {said}", first.wall, before.wall, 0.30),
        Ratio(f"all files after one item is edited / all papers {said}", edited.processor, before.processor, 0.15),
        Ratio(f"all files after a new commit of nothing / all papers {said}", again.processor, before.processor, 0.10),
        *watched(folder, before),
        *(Ratio(f"`{name}` / `{name}` {said}", mine[name].processor, others[name].processor, 0.50) for name in mine),
    ]


def watched(folder: Path, before: Took) -> list[Ratio]:
    """Build again in a long-lived process after one item was edited, over all papers of the former compiler."""
    from tenderwright.commands.watch import Rounds

    package = folder / "watched-whole"
    shutil.copytree(MARRAM, package)
    (item,) = package.glob("items/420-*.yaml")
    builder = Rounds(package, folder / "out-whole", None)
    _round(builder)
    page = everything = float("inf")
    for number in range(3):
        item.write_text(item.read_text("utf-8").replace("scope: |\n  ", f"scope: |\n  {number} times. ", 1), "utf-8")
        times = _round(builder)
        page, everything = min(page, times[0]), min(everything, times[1])
    said = f"all papers at {FORMER[:7]}"
    return [
        Ratio(f"notices and HTML after one item is edited, watched / {said}", page, before.processor, 0.02),
        Ratio(f"all files after one item is edited, watched / {said}", everything, before.processor, 0.10),
    ]


def many_readings(folder: Path) -> list[Ratio]:
    """Read, analyse and draw a million thickness readings, over numpy reading the same files and nothing else."""
    from tests.bench.readings import by_numpy, ours, ship, write_surveys

    package = ship()
    many, few = write_surveys(folder, 1_000_000), write_surveys(folder, 100_000)
    all_of_them, other, tenth = best(5, ours(package, many), by_numpy(many), ours(package, few))
    return [
        Ratio("1,000,000 readings read, analysed, drawn / numpy.loadtxt alone", all_of_them, other, 3.0),
        Ratio("the same / with 100,000 readings", all_of_them, tenth, 12.0),
    ]


def many_trials() -> Ratio:
    """Run 100,000 trials of 200 lines and 150 activities, over numpy sampling as many numbers and nothing else."""
    from tests.bench.trials import by_numpy, ours

    all_of_them, other = best(3, ours(), by_numpy())
    return Ratio("100,000 trials of 200 lines, 150 activities / numpy sampling", all_of_them, other, 3.0)


def table(rows: list[Ratio]) -> str:
    """Write the rows as a table of text."""
    width = max((len(row.what) for row in rows), default=4)
    lines = [f"{'what':<{width}}  {'ours':>8}  {'other':>8}  {'ratio':>6}  {'most':>6}"]
    for row in rows:
        met = "met" if row.measured <= row.target else "not met"
        figures = f"{row.ours:7.3f}s  {row.other:7.3f}s  {row.measured:6.2f}  {row.target:6.2f}"
        lines.append(f"{row.what:<{width}}  {figures}  {met}")
    return "\n".join(lines)


def taken(*ways: Callable[[], list[Ratio]]) -> list[Ratio]:
    """Take ratios; where one cannot be taken, say why and go on."""
    rows = []
    for way in ways:
        try:
            rows += way()
        except Exception as error:
            print(f"could not be taken: {type(error).__name__}: {error}", file=sys.stderr)
    return rows


def main() -> None:
    """Take every ratio and print them."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        print(
            table(
                taken(
                    lambda: start_of_check(folder),
                    lambda: [growth_of_check(folder)],
                    lambda: [typesetting()],
                    lambda: against_former(folder),
                    lambda: many_readings(folder),
                    lambda: [many_trials()],
                )
            )
        )


if __name__ == "__main__":
    main()
