"""Sets the parts of an edition: those that are held or kept are taken, the others are set, by several processes."""

from __future__ import annotations

import math
import os
from collections.abc import Collection, Iterable, Mapping
from concurrent.futures import Future
from html import unescape
from itertools import count
from queue import Empty, PriorityQueue
from threading import Thread
from weakref import finalize

from tenderwright.writing.errors import WritingError
from tenderwright.writing.faces import covered_characters
from tenderwright.writing.typesetting.kept import KeptParts
from tenderwright.writing.typesetting.setter import PartSetter
from tenderwright.writing.typesetting.worker import Answer, Task, Worker, answer

_Waiting = PriorityQueue[tuple[float, int, Task | None, "Future[Answer]"]]
"""Parts to set, the largest first, each with its answer to come; no part where a process is to end."""
_WORTH_A_PROCESS = 150_000
"""Characters of HTML that are set here before another process has started and set its first part."""


class Parts:
    """Sets parts, and holds those of the last time so that only what changed is set again."""

    def __init__(self, kept: KeptParts | None, processes: int | None) -> None:
        """Take where parts are kept, if anywhere, and by how many processes they are set: by default, one a core."""
        self._kept = kept
        self._processes = processes or cores()
        self._held: dict[str, dict[str, bytes]] = {}
        self._read: dict[str, bytes] = {}
        """What was kept, read once, until it is given."""
        self._waiting: _Waiting = PriorityQueue()
        self._answers: dict[str, Future[Answer]] = {}
        self._count = count()
        self._helpers: list[Thread] = []
        self._setter: PartSetter | None = None
        finalize(self, _end, self._waiting, self._helpers)

    def begin(self, pages: Mapping[str, str]) -> None:
        """Let other processes set parts, whose HTML is given by its anchor, while this one does something else."""
        missing = [Task(anchor, page) for anchor, page in pages.items() if page not in self._answers]
        missing = [task for task in missing if self._found(task.page) is None]
        for task in missing:
            self._answers[task.page] = Future()
            self._waiting.put((-len(task.page), next(self._count), task, self._answers[task.page]))
        worth = sum(len(task.page) for task in missing) // _WORTH_A_PROCESS
        while len(self._helpers) < min(self._processes, len(missing), worth) - 1:
            self._helpers.append(Thread(target=_help, args=(self._waiting, Worker()), daemon=True))
            self._helpers[-1].start()

    def set(self, pages: Mapping[str, str]) -> tuple[dict[str, bytes], tuple[str, ...]]:
        """Give the PDF of each part, whose HTML is given by its anchor, and the parts that were set for it.

        Raises `WritingError` when the typesetter complains of a part.
        """
        self.begin(pages)
        asked = {page: self._answers.pop(page) for page in pages.values() if page in self._answers}
        self._join_in(asked.values())
        found = {page: pdf for page in pages.values() if page not in asked and (pdf := self._found(page)) is not None}
        for page, coming in asked.items():
            answered = coming.result()
            if answered.complaint:
                raise WritingError(answered.complaint)
            found[page] = answered.pdf
            if self._kept is not None and not uncovered([page]):
                self._kept.put(page, answered.pdf)
        for page in pages.values():
            self._read.pop(page, None)
        return {anchor: found[page] for anchor, page in pages.items()}, tuple(
            anchor for anchor, page in pages.items() if page in asked
        )

    def hold(self, name: str, pdfs: Mapping[str, bytes]) -> None:
        """Hold the parts of an edition, by their HTML, in place of those held under its name before."""
        self._held[name] = dict(pdfs)

    def _found(self, page: str) -> bytes | None:
        held = next((parts[page] for parts in self._held.values() if page in parts), None)
        if held is not None or self._kept is None:
            return held
        if page not in self._read and (kept := self._kept.get(page)) is not None:
            self._read[page] = kept
        return self._read.get(page)

    def _join_in(self, wanted: Collection[Future[Answer]]) -> None:
        """Set parts here, too, for as long as one that is wanted waits to be set."""
        while not all(one.done() for one in wanted):
            try:
                _, _, task, coming = self._waiting.get_nowait()
            except Empty:
                return
            if task is not None:
                self._setter = self._setter or PartSetter()
                coming.set_result(answer(self._setter, task))


def _help(waiting: _Waiting, worker: Worker) -> None:
    """Have a process set parts, the largest first, until there is to be an end."""
    while True:
        _, _, task, coming = waiting.get()
        if task is None:
            worker.close()
            return
        try:
            coming.set_result(worker.set(task))
        except RuntimeError as error:
            coming.set_exception(error)
            return


def _end(waiting: _Waiting, helpers: list[Thread]) -> None:
    """Let each process end with the part that it is setting."""
    for number, _ in enumerate(helpers):
        waiting.put((-math.inf, number, None, Future()))
    for helper in helpers:
        helper.join()


def cores() -> int:
    """Give the number of cores that this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def uncovered(texts: Iterable[str]) -> str:
    """Give the characters of some HTML that the faces do not hold, so that another face of the machine sets them."""
    characters = {ord(letter) for text in texts for letter in set(unescape(text))}
    return "".join(chr(code) for code in sorted(characters - covered_characters()) if code > 32)
