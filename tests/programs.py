"""Programs beside Python that some tests run: where one is missing they are skipped, but fail in CI."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path
from typing import NoReturn

import pytest

IN_CI = bool(os.environ.get("CI"))


def lacking(what: str) -> NoReturn:
    """Skip the test that runs, since the machine lacks something; in CI, which must have it, fail."""
    if IN_CI:
        pytest.fail(f"{what} is not on this machine, and CI skips no test", pytrace=False)
    pytest.skip(f"{what} is not on this machine")


def convert(sources: list[Path], kind: str, folder: Path, profile: Path) -> list[Path]:
    """Convert files with LibreOffice in one run, and say where in the folder they should now be."""
    user = f"-env:UserInstallation={profile.as_uri()}"
    command = ["soffice", user, "--headless", "--convert-to", kind, "--outdir", str(folder), *map(str, sources)]
    made = [folder / f"{source.stem}.{kind}" for source in sources]
    for path in made:
        path.unlink(missing_ok=True)  # LibreOffice ends well also where it made nothing
    subprocess.run(command, check=True, capture_output=True)
    return made
