"""Numbers changed at random: none may exhaust memory or time, and none may end in a traceback."""

from __future__ import annotations

import gc
import json
import os
import random
import resource
import signal
import time
import traceback
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import count
from types import FrameType
from typing import BinaryIO

from tenderwright.calculations.steps.registry import steps
from tests.fuzz.breaks import NUMBERED, Break, breaks
from tests.fuzz.broken_package import BrokenPackage, spread

MOST_SECONDS = 10
"""Of the processor, for one package."""
MOST_MEMORY = 2**30
"""In bytes, beyond what the process holds before it checks it."""
BEYOND = 4
"""So many times more than it may take, the process is ended by the system."""
TOLD_EVERY = 100


class TooLong(Exception):
    """A package took longer to check than it may."""


@dataclass(frozen=True)
class Cost:
    """What one package with a number changed cost."""

    fault: str
    notices: int
    seconds: float
    """Of the processor."""
    memory: int
    """The most that its process held, bytes."""


def costs(packages: list[BrokenPackage], seed: int, until: float, most: int | None, skip: int = 0) -> int:
    """Change numbers, each in a process of its own, and tell what they cost; gives 1 where one costs too much or fails.

    The first `skip` changes are drawn and passed over, so that a run can go on where another with its seed ended.
    """
    chance = random.Random(seed)
    print(f"seed {seed}, from change {skip + 1}", flush=True)
    sources = [breaks(package.texts, chance, (NUMBERED,)) for package in packages]
    found: list[tuple[Cost, str]] = []
    gc.freeze()
    for number in count(1):
        place = chance.choices(range(len(packages)), [3, 1][: len(packages)])[0]
        one = next(sources[place])
        if number <= skip:
            continue
        if time.monotonic() >= until or (most is not None and len(found) >= most):
            break
        cost = cost_of(packages[place], one)
        found.append((cost, f"{packages[place].root.name}: '{one}'"))
        if cost.fault:
            print(f"\n{found[-1][1]}: {cost.fault}\n    again: python -m tests.fuzz --again '{one}'", flush=True)
        if len(found) % TOLD_EVERY == 0:
            print(f"up to change {number}: {_summed(found)}", flush=True)
    print(f"\n{_summed(found)}\nnotices: {spread([cost.notices for cost, _ in found])}")
    return 1 if any(cost.fault for cost, _ in found) else 0


def _summed(found: list[tuple[Cost, str]]) -> str:
    failures = Counter(bool(cost.fault) for cost, _ in found)[True]
    if not found:
        return "no number changed"
    longest, where = max(found, key=lambda one: one[0].seconds)
    largest, which = max(found, key=lambda one: one[0].memory)
    return (
        f"{len(found)} numbers changed, {failures} failures; "
        f"longest {longest.seconds:.2f} s of the processor ({where}); "
        f"most memory {largest.memory / 2**20:.0f} MiB ({which})"
    )


def cost_of(package: BrokenPackage, *broken: Break) -> Cost:
    """Check the package with these breaks in a process of its own, and say what that costs or how it fails."""
    held = _resident()
    fault, notices, used = _apart(lambda: _notices(package, broken))
    package.mend(*broken)
    seconds, memory = used.ru_utime + used.ru_stime, used.ru_maxrss * 1024
    if not fault and memory - held > MOST_MEMORY:
        fault = f"it takes {(memory - held) >> 20} MiB"
    return Cost(fault, notices, seconds, memory)


def _resident() -> int:
    """Give the memory that this process holds, bytes, of which the one forked off begins with a copy."""
    with open("/proc/self/statm", encoding="ascii") as pages:
        return int(pages.read().split()[1]) * resource.getpagesize()


def _notices(package: BrokenPackage, broken: Sequence[Break]) -> int:
    """Count what is told of the package, with all calculated that a page could ask for."""
    told = package.told(*broken)
    for step in steps():
        told.compiled.calculated.outcome(step)
    return len(told.notices)


def _apart(work: Callable[[], int]) -> tuple[str, int, resource.struct_rusage]:
    """Do a work in a process forked off; gives its fault, its figure, and what it used of the machine."""
    out, into = os.pipe()
    child = os.fork()
    if child == 0:
        with os.fdopen(into, "wb") as pipe:
            _told(work, pipe)
        os._exit(0)
    os.close(into)
    with os.fdopen(out, "rb") as pipe:
        written = pipe.read()
    _, status, used = os.wait4(child, 0)
    fault, figure = json.loads(written) if written else (f"the system ended it (status {status})", 0)
    return fault, figure, used


def _told(work: Callable[[], int], pipe: BinaryIO) -> None:
    """Do the work under the bounds, and write its fault and figure."""
    resource.setrlimit(resource.RLIMIT_AS, (BEYOND * MOST_MEMORY, BEYOND * MOST_MEMORY))
    resource.setrlimit(resource.RLIMIT_CPU, (BEYOND * MOST_SECONDS, BEYOND * MOST_SECONDS))
    signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, MOST_SECONDS)
    fault, figure = "", 0
    try:
        figure = work()
    except TooLong:
        fault = f"it takes more than {MOST_SECONDS} s\n{traceback.format_exc()}"
    except Exception:  # whatever it is, it is what this looks for
        fault = traceback.format_exc()
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
    pipe.write(json.dumps([fault, figure]).encode())


def stop(number: int, frame: FrameType | None) -> None:
    """Break off what takes too long."""
    raise TooLong
