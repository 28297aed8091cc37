from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from tenderwright.closing import CompiledFindings, compile_findings
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read
from tenderwright.starter.write import write_starter

FINDINGS = Path(__file__).parents[1] / "fixtures" / "findings"
SMALL = FINDINGS / "sandling-2027.yaml"
MARRAM = FINDINGS / "marram-2027.yaml"
PACKAGE = Path(__file__).parents[2] / "package_src"


@dataclass(frozen=True)
class Tendered:
    """A compiled package that findings are held against."""

    root: Path
    compiled: Compiled
    owner: OwnersSide

    def check(self, file: Path) -> CompiledFindings:
        """Compile findings."""
        return compile_findings(file, self.compiled, self.owner)


def compiled(root: Path) -> Tendered:
    files = read(root)
    package = compile_package(files)
    return Tendered(root, package, compile_owner(files, package))


@pytest.fixture(scope="session")
def sandling(tmp_path_factory: pytest.TempPathFactory) -> Tendered:
    root = tmp_path_factory.mktemp("tendered") / "sandling"
    write_starter(root)
    return compiled(root)


@pytest.fixture(scope="session")
def marram() -> Tendered:
    return compiled(PACKAGE)


@pytest.fixture
def small_text() -> str:
    return SMALL.read_text("utf-8")
