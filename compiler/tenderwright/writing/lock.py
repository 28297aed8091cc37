"""Keeps a folder to one writer at a time, by a lock of the system on a file that names the process and its host."""

from __future__ import annotations

import os
import platform
import re
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from time import monotonic, sleep

from tenderwright.writing.errors import WritingError

LOCK = ".tenderwright-lock"
_PATIENCE = 60.0
"""Seconds; a folder is written in less than one."""
_PAUSE = 0.05
_RECORD = re.compile(rb"process (\d+) on host (\S+)\n")
_FAR = 1 << 30
"""Where Windows locks a byte, so that the record before it can still be read."""


@contextmanager
def locked(folder: Path, patience: float = _PATIENCE) -> Iterator[None]:
    """Hold the lock of a folder for the time of what follows, waiting first while another process of this host has it.

    The system lets go of the lock with the process, so that a dead one's needs no taking over. Raises `WritingError`
    where the wait is too long, where the file names another host, whose processes cannot be asked, or where the disk
    keeps no locks.
    """
    path = folder / LOCK
    handle = _hold(path, monotonic() + patience)
    try:
        if stranger := _stranger(handle):
            raise WritingError(_other_host(path, stranger))
        os.ftruncate(handle, 0)
        os.lseek(handle, 0, os.SEEK_SET)
        os.write(handle, f"process {os.getpid()} on host {_host()}\n".encode())
        try:
            yield
        finally:
            if sys.platform != "win32":  # while it is still held, so that none can hold a file that is gone
                path.unlink(missing_ok=True)
    finally:
        os.close(handle)
    if sys.platform == "win32":
        with suppress(OSError):  # another has opened it meanwhile
            path.unlink()


def refuse_other_host(folder: Path) -> None:
    """Raise `WritingError` where the lock of a folder names another host."""
    try:
        handle = os.open(folder / LOCK, os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0))
    except OSError:
        return
    try:
        stranger = _stranger(handle)
    finally:
        os.close(handle)
    if stranger:
        raise WritingError(_other_host(folder / LOCK, stranger))


def _hold(path: Path, until: float) -> int:
    """Give the open file once it is locked; wait where another process has it, and say so."""
    waited = 0
    while isinstance(found := _try(path), bytes):
        record = _RECORD.fullmatch(found)
        who = f"process {record[1].decode()}" if record else "another process"
        if monotonic() > until:
            raise WritingError(f"{who} is still writing into {path.parent}; wait for it, or end it, and try again")
        waited += 1
        if waited == 2:
            print(f"waiting for {who}, which is writing into {path.parent}", file=sys.stderr, flush=True)
        sleep(_PAUSE)
    return found


def _try(path: Path) -> int | bytes:
    """Open the file and lock it; where another has it, or took it away with its own lock, give what it says instead."""
    try:
        handle = os.open(path, os.O_RDWR | os.O_CREAT | getattr(os, "O_NOFOLLOW", 0), 0o666)
        try:
            if _lock(handle) and _is_at(handle, path):
                return handle
            record = _read(handle)
        except BaseException:
            os.close(handle)
            raise
        os.close(handle)
    except OSError as error:
        raise WritingError(f"{path.parent} cannot be locked, and is not written without: {error}") from error
    return record


def _lock(handle: int) -> bool:
    """Lock an open file, and tell whether no other process had."""
    try:
        if sys.platform == "win32":
            import msvcrt

            os.lseek(handle, _FAR, os.SEEK_SET)
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except (BlockingIOError, PermissionError):
        return False
    return True


def _is_at(handle: int, path: Path) -> bool:
    """Tell whether the file that was locked is still the one of that name."""
    try:
        return os.path.samestat(os.fstat(handle), os.stat(path, follow_symlinks=False))
    except FileNotFoundError:
        return False


def _read(handle: int) -> bytes:
    os.lseek(handle, 0, os.SEEK_SET)
    return os.read(handle, 1000)


def _stranger(handle: int) -> tuple[str, str] | None:
    """Give the process and the host that the file names, where that is not this host."""
    found = _RECORD.fullmatch(_read(handle))
    if found is None or found[2].decode(errors="replace") == _host():
        return None
    return found[1].decode(), found[2].decode(errors="replace")


def _other_host(path: Path, stranger: tuple[str, str]) -> str:
    process, host = stranger
    return (
        f"process {process} on the computer `{host}` is writing into {path.parent}, or was stopped while it did; "
        f"if nothing runs there any more, delete {path} and give the command again"
    )


def _host() -> str:
    return "-".join(platform.node().split()) or "unnamed"
