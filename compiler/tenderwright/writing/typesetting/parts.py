"""Sets the parts of an edition: those that are held or kept are taken, the others are set, by several processes."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Mapping
from concurrent.futures import ThreadPoolExecutor
from functools import partial
from html import unescape
from queue import Empty, SimpleQueue
from weakref import finalize

from tenderwright.writing.errors import WritingError
from tenderwright.writing.faces import covered_characters
from tenderwright.writing.typesetting.kept import KeptParts
from tenderwright.writing.typesetting.setter import PartSetter
from tenderwright.writing.typesetting.worker import Answer, Task, Worker, answer

_WORTH_A_PROCESS = 150_000
"""Characters of HTML that are set here before another process has started and set its first part."""


class Parts:
    """Sets parts, and holds those of the last time so that only what changed is set again."""

    def __init__(self, kept: KeptParts | None, processes: int | None) -> None:
        """Take where parts are kept, if anywhere, and by how many processes they are set: by default, one a core."""
        self._kept = kept
        self._processes = processes or cores()
        self._held: dict[str, dict[str, bytes]] = {}
        self._workers: list[Worker] = []
        self._setter: PartSetter | None = None
        finalize(self, _end, self._workers)

    def set(self, pages: Mapping[str, str]) -> tuple[dict[str, bytes], tuple[str, ...]]:
        """Give the PDF of each part, whose HTML is given by its anchor, and the parts that were set for it.

        Raises `WritingError` when the typesetter complains of a part.
        """
        found = {page: pdf for page in pages.values() if (pdf := self._found(page)) is not None}
        missing = [Task(anchor, page) for anchor, page in pages.items() if page not in found]
        answers = self._answers(missing)
        for task in missing:
            if complaint := answers[task.anchor].complaint:
                raise WritingError(complaint)
            pdf = answers[task.anchor].pdf
            found[task.page] = pdf
            if self._kept is not None and not uncovered([task.page]):
                self._kept.put(task.page, pdf)
        return {anchor: found[page] for anchor, page in pages.items()}, tuple(task.anchor for task in missing)

    def hold(self, name: str, pdfs: Mapping[str, bytes]) -> None:
        """Hold the parts of an edition, by their HTML, in place of those held under its name before."""
        self._held[name] = dict(pdfs)

    def _found(self, page: str) -> bytes | None:
        held = next((parts[page] for parts in self._held.values() if page in parts), None)
        if held is not None or self._kept is None:
            return held
        return self._kept.get(page)

    def _answers(self, tasks: list[Task]) -> dict[str, Answer]:
        """Have parts set, the largest first, here and by as many other processes as there is work for."""
        if not tasks:
            return {}
        waiting: SimpleQueue[Task] = SimpleQueue()
        for task in sorted(tasks, key=lambda task: len(task.page), reverse=True):
            waiting.put(task)
        worth = sum(len(task.page) for task in tasks) // _WORTH_A_PROCESS
        others = min(self._processes, len(tasks), worth) - 1
        while len(self._workers) < others:
            self._workers.append(Worker())
        answers: dict[str, Answer] = {}
        with ThreadPoolExecutor(max(others, 1)) as pool:
            running = [pool.submit(_drain, waiting, worker.set, answers) for worker in self._workers[: max(others, 0)]]
            if self._setter is None:
                self._setter = PartSetter()
            _drain(waiting, partial(answer, self._setter), answers)
            for one in running:
                one.result()
        return answers


def _drain(waiting: SimpleQueue[Task], ask: Callable[[Task], Answer], answers: dict[str, Answer]) -> None:
    """Set parts for as long as any wait."""
    while True:
        try:
            task = waiting.get_nowait()
        except Empty:
            return
        answers[task.anchor] = ask(task)


def _end(workers: list[Worker]) -> None:
    for worker in workers:
        worker.close()


def cores() -> int:
    """Give the number of cores that this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def uncovered(texts: Iterable[str]) -> str:
    """Give the characters of some HTML that the faces do not hold, so that another face of the machine sets them."""
    characters = {ord(letter) for text in texts for letter in set(unescape(text))}
    return "".join(chr(code) for code in sorted(characters - covered_characters()) if code > 32)
