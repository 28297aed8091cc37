"""The yard edition of the starter package, composed by the pipeline as `build` does."""

from __future__ import annotations

import tempfile
from functools import cache
from pathlib import Path

from tenderwright.documents.edition import Edition
from tenderwright.pipeline import compile_package, compose_yard, read, stamp_of
from tenderwright.starter.write import write_starter


@cache
def starter_edition() -> Edition:
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder) / "package"
        write_starter(root)
        compiled = compile_package(read(root))
        assert compiled.sound
        return compose_yard(compiled, stamp_of(compiled))[0]
