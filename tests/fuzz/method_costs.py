"""Examples of methods broken at random: each is answered or told, in seconds and without filling the memory."""

from __future__ import annotations

import json
import random
import resource
import signal
import time
import traceback
from pathlib import Path

from tenderwright.calculations.registry import methods
from tests.fuzz.costs import TooLong, stop
from tests.fuzz.methods import broken, fault_of

MOST_SECONDS = 2
"""Of the processor, for both forms of an answer together."""
MOST_MEMORY = 4 * 2**30
"""In bytes, of the whole process; beyond it Python raises MemoryError."""


def method_costs(seed: int, until: float, most: int | None, file: Path) -> int:
    """Break one method after the other and tell what fails; gives 1 where anything did."""
    resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))
    signal.signal(signal.SIGPROF, stop)
    chance = random.Random(seed)
    print(f"seed {seed}")
    done, failures, order = 0, 0, list(methods().values())
    while time.monotonic() < until and (most is None or done < most):
        method = order[done % len(order)]
        data, what = broken(method, chance)
        signal.setitimer(signal.ITIMER_PROF, MOST_SECONDS)
        try:
            fault = fault_of(method, data, file)
        except TooLong:
            fault = f"it takes more than {MOST_SECONDS} s\n{traceback.format_exc()}"
        except Exception:  # whatever it is, it is what this looks for
            fault = traceback.format_exc()
        finally:
            signal.setitimer(signal.ITIMER_PROF, 0)
        done += 1
        if fault:
            failures += 1
            print(f"\n{method.name}: {what}: {fault}\n    input: {json.dumps(data)}", flush=True)
    print(f"\n{done} inputs of {len(order)} methods, {failures} failures")
    return 1 if failures else 0
