"""Break packages at random for as long as told, and print what goes wrong: `python -m tests.fuzz --seconds 600`."""

from __future__ import annotations

import argparse
import random
import shutil
import sys
import time
import traceback
from pathlib import Path
from tempfile import TemporaryDirectory

from tenderwright.notices.render import as_text
from tenderwright.starter.write import write_starter
from tests.fuzz.breaks import GONE, KINDS, Break, breaks
from tests.fuzz.broken_package import BrokenPackage, spread
from tests.fuzz.costs import costs
from tests.fuzz.law import fault_of, fault_of_two
from tests.fuzz.method_costs import method_costs

REPOSITORY = Path(__file__).resolve().parents[2]


def main() -> int:
    """Break and tell; gives 1 where anything failed."""
    parser = argparse.ArgumentParser(prog="python -m tests.fuzz", description=__doc__)
    parser.add_argument("--seed", type=int, default=None, help="where chance begins (default: anew each time)")
    parser.add_argument("--seconds", type=float, default=60.0, help="how long to go on (default: 60)")
    parser.add_argument("--breaks", type=int, default=None, help="stop after so many breaks")
    parser.add_argument("--skip", type=int, default=0, help="with --numbers: go on after so many changes of this seed")
    parser.add_argument("--package", type=Path, default=None, help="the package (default: package_src and the starter)")
    parser.add_argument("--numbers", action="store_true", help="change numbers alone: none takes the machine")
    parser.add_argument("--methods", action="store_true", help="break the inputs of `reckon` instead of packages")
    parser.add_argument("--again", nargs="+", default=None, metavar="BREAK", help="do these, as printed, and show all")
    arguments = parser.parse_args()
    with TemporaryDirectory() as folder:
        if arguments.again:
            return _again(_package(arguments.package or REPOSITORY / "package_src", Path(folder)), arguments.again)
        seed = arguments.seed if arguments.seed is not None else random.SystemRandom().randrange(10**6)
        until = time.monotonic() + arguments.seconds
        if arguments.methods:
            return method_costs(seed, until, arguments.breaks, Path(folder) / "input.yaml")
        roots = [arguments.package] if arguments.package else [REPOSITORY / "package_src", None]
        packages = [_package(root, Path(folder) / str(number)) for number, root in enumerate(roots)]
        if arguments.numbers:
            return costs(packages, seed, until, arguments.breaks, arguments.skip)
        return _fuzz(packages, seed, until, arguments.breaks)


def _package(root: Path | None, folder: Path) -> BrokenPackage:
    folder = folder / (root.name if root is not None else "starter")
    if root is None:
        write_starter(folder)
    else:
        shutil.copytree(root, folder, ignore=shutil.ignore_patterns("build", ".git"))
    return BrokenPackage(folder)


def _fuzz(packages: list[BrokenPackage], seed: int, until: float, most: int | None) -> int:
    chance = random.Random(seed)
    print(f"seed {seed}")
    sources = [breaks(package.texts, chance) for package in packages]
    failures, counts = 0, []
    while time.monotonic() < until and (most is None or len(counts) < most):
        place = chance.choices(range(len(packages)), [3, 1][: len(packages)])[0]
        package, one = packages[place], next(sources[place])
        broken = [one]
        how = chance.random()
        if how < 0.05:
            broken = [Break(one.path, 0, GONE)]
        elif how < 0.1:
            broken = [one, next(sources[place])]
        fault, told = _tried(package, broken)
        counts.append(told)
        if fault:
            failures += 1
            words = " ".join(f"'{each}'" for each in broken)
            print(f"\n{package.root.name}: {words}: {fault}")
            print(f"    again: python -m tests.fuzz --again {words}", flush=True)
    print(f"\n{len(counts)} breaks ({', '.join(KINDS)}, {GONE}, two at once), {failures} failures")
    print(f"notices for a break: {spread(counts)}")
    return 1 if failures else 0


def _tried(package: BrokenPackage, broken: list[Break]) -> tuple[str, int]:
    """Give what is wrong after the breaks, and how many notices there were."""
    try:
        if len(broken) == 2:
            return fault_of_two(package, *broken), 2
        told = package.told(*broken)
    except Exception:  # whatever it is, it is what this looks for
        return traceback.format_exc(), 0
    fault = fault_of(told)
    return fault and f"{fault}\n{as_text(told.notices, {})}", len(told.notices)


def _again(package: BrokenPackage, written: list[str]) -> int:
    told = package.told(*map(Break.read, written))
    sys.stdout.write(as_text(told.notices, package.texts))
    return 0


if __name__ == "__main__":
    sys.exit(main())
