"""A process that sets parts for another: it reads them from its input one by one, and answers each on its output."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from typing import IO

import msgspec

from tenderwright.writing.errors import WritingError
from tenderwright.writing.typesetting.setter import PartSetter

_SIZE = 8
"""Bytes that give the length of what follows them."""


class Answer(msgspec.Struct, frozen=True):
    """What became of a part: its PDF, or what the typesetter complained of."""

    pdf: bytes = b""
    complaint: str = ""


class Task(msgspec.Struct, frozen=True):
    """A part to set."""

    anchor: str
    page: str


class Worker:
    """Another process that sets parts, as this one would."""

    def __init__(self) -> None:
        """Start the process, with the libraries that this one finds."""
        program = f"import sys; sys.path[:] = {sys.path!r}; from {__name__} import serve; serve()"
        command = [sys.executable, "-c", program]
        self._process = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE)

    def set(self, task: Task) -> Answer:
        """Have a part set, and wait for it; raises RuntimeError where the process ended instead."""
        given, answers = self._process.stdin, self._process.stdout
        assert given is not None
        assert answers is not None
        try:
            _write(given, msgspec.msgpack.encode(task))
            content = _read(answers)
        except BrokenPipeError:
            content = None
        if content is None:
            raise RuntimeError(f"the process that was to set part {task.anchor} ended with {self._process.wait()}")
        return msgspec.msgpack.decode(content, type=Answer)

    def close(self) -> None:
        """End the process, which is waiting for its next part."""
        self._process.communicate()


def answer(setter: PartSetter, task: Task) -> Answer:
    """Set a part, or say what the typesetter complains of."""
    try:
        return Answer(setter.set(task.anchor, task.page))
    except WritingError as error:
        return Answer(complaint=str(error))


def serve() -> None:
    """Set parts until there are no more; whoever asked for them decides when to stop."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    with os.fdopen(os.dup(1), "wb") as answers:
        os.dup2(2, 1)
        setter = PartSetter()
        while (content := _read(sys.stdin.buffer)) is not None:
            _write(answers, msgspec.msgpack.encode(answer(setter, msgspec.msgpack.decode(content, type=Task))))


def _write(stream: IO[bytes], content: bytes) -> None:
    stream.write(len(content).to_bytes(_SIZE, "big") + content)
    stream.flush()


def _read(stream: IO[bytes]) -> bytes | None:
    size = stream.read(_SIZE)
    content = stream.read(int.from_bytes(size, "big"))
    return content if len(size) == _SIZE else None
