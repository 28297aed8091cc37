"""Numbers changed at random: none may exhaust memory or time, and none may end in a traceback."""

from __future__ import annotations

import random
import resource
import signal
import time
import traceback
from types import FrameType

from tests.fuzz.breaks import NUMBERED, Break, breaks
from tests.fuzz.broken_package import BrokenPackage, spread

MOST_SECONDS = 10
"""Of the processor."""
MOST_MEMORY = 2**30
"""In bytes, of the whole process."""


class TooLong(Exception):
    """A package took longer to check than it may."""


def costs(packages: list[BrokenPackage], seed: int, until: float, most: int | None) -> int:
    """Change numbers and tell what each costs; gives 1 where one costs too much or ends in a traceback."""
    chance = random.Random(seed)
    print(f"seed {seed}")
    sources = [breaks(package.texts, chance, (NUMBERED,)) for package in packages]
    failures, counts, longest = 0, [], 0.0
    while time.monotonic() < until and (most is None or len(counts) < most):
        place = chance.choices(range(len(packages)), [3, 1][: len(packages)])[0]
        one = next(sources[place])
        begun = time.monotonic()
        fault, told = cost_of(packages[place], one)
        longest = max(longest, time.monotonic() - begun)
        counts.append(told)
        if fault:
            failures += 1
            print(f"\n{packages[place].root.name}: '{one}': {fault}")
            print(f"    again: python -m tests.fuzz --again '{one}'", flush=True)
    print(f"\n{len(counts)} numbers changed, {failures} failures")
    print(f"longest {longest:.1f} s; most memory {_memory() / 2**20:.0f} MiB; notices: {spread(counts)}")
    return 1 if failures else 0


def cost_of(package: BrokenPackage, *broken: Break) -> tuple[str, int]:
    """Say how the package with these breaks costs too much or fails, and count what is told of it."""
    before = _memory()
    signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, MOST_SECONDS)
    try:
        told = package.told(*broken)
    except TooLong:
        return f"it takes more than {MOST_SECONDS} s\n{traceback.format_exc()}", 0
    except Exception:  # whatever it is, it is what this looks for
        return traceback.format_exc(), 0
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
    now = _memory()
    fault = f"the memory grew from {before >> 20} to {now >> 20} MiB" if now > max(before, MOST_MEMORY) else ""
    return fault, len(told.notices)


def _memory() -> int:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024


def stop(number: int, frame: FrameType | None) -> None:
    """Break off what takes too long."""
    raise TooLong
