"""One process at a time writes into a folder; a dead one keeps nobody out."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from tenderwright.writing import lock
from tenderwright.writing.errors import WritingError
from tenderwright.writing.lock import LOCK, locked, refuse_other_host

_HOLD = """
import sys
from pathlib import Path
from tenderwright.writing.lock import locked
with locked(Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.read()
"""


def _holder(folder: Path) -> subprocess.Popen[str]:
    command = [sys.executable, "-c", _HOLD, str(folder)]
    process = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    assert process.stdout.readline() == "held\n"
    return process


def test_the_file_names_process_and_host_while_it_is_held_and_is_gone_after(tmp_path: Path) -> None:
    with locked(tmp_path):
        said = (tmp_path / LOCK).read_text("utf-8")
        refuse_other_host(tmp_path)
    assert said == f"process {os.getpid()} on host {lock._host()}\n"
    assert list(tmp_path.iterdir()) == []


def test_it_is_let_go_where_something_fails(tmp_path: Path) -> None:
    with pytest.raises(KeyboardInterrupt), locked(tmp_path):
        raise KeyboardInterrupt
    assert list(tmp_path.iterdir()) == []


def test_another_waits_says_for_whom_and_goes_on(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with _holder(tmp_path) as process:
        assert process.stdin is not None
        threading.Timer(0.3, process.stdin.close).start()
        with locked(tmp_path):
            process.wait()
    assert f"waiting for process {process.pid}, which is writing into {tmp_path}" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_patience_ends(tmp_path: Path) -> None:
    with _holder(tmp_path) as process:
        with pytest.raises(WritingError, match=f"process {process.pid} is still writing into"), locked(tmp_path, 0):
            pytest.fail("it is held")
        process.communicate("")


def test_a_killed_process_keeps_nobody_out(tmp_path: Path) -> None:
    with _holder(tmp_path) as process:
        os.kill(process.pid, signal.SIGKILL)
        process.wait()
    assert (tmp_path / LOCK).is_file()
    with locked(tmp_path, 0):
        pass
    assert list(tmp_path.iterdir()) == []


def test_another_host_is_named_with_the_way_out(tmp_path: Path) -> None:
    (tmp_path / LOCK).write_text("process 7 on host harrow\n", "utf-8")
    told = f"process 7 on the computer `harrow` is writing into .* delete {tmp_path / LOCK} and give the command again"
    with pytest.raises(WritingError, match=told):
        refuse_other_host(tmp_path)
    with pytest.raises(WritingError, match=told), locked(tmp_path):
        pytest.fail("it may be held")
    assert (tmp_path / LOCK).read_text("utf-8") == "process 7 on host harrow\n"


@pytest.mark.parametrize("left", [b"", b"process 12 on", b"\xff\n"])
def test_a_record_cut_short_keeps_nobody_out(tmp_path: Path, left: bytes) -> None:
    (tmp_path / LOCK).write_bytes(left)
    with locked(tmp_path, 0):
        pass


def test_a_link_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "precious").write_text("mine", "utf-8")
    (tmp_path / LOCK).symlink_to(tmp_path / "precious")
    with pytest.raises(WritingError, match="cannot be locked"), locked(tmp_path):
        pytest.fail("it is a link")
    assert (tmp_path / "precious").read_text("utf-8") == "mine"


def test_a_hundred_takers_never_hold_it_together(tmp_path: Path) -> None:
    inside: list[int] = []
    most: list[int] = []

    def take() -> None:
        for _ in range(10):
            with locked(tmp_path):
                inside.append(1)
                most.append(len(inside))
                inside.pop()

    takers = [threading.Thread(target=take) for _ in range(10)]
    for taker in takers:
        taker.start()
    for taker in takers:
        taker.join()
    assert (len(most), max(most)) == (100, 1)
