"""Compile a package with the owner's papers, for a command that goes on only where neither has a mistake."""

from __future__ import annotations

import sys

from tenderwright.commands.todos import open_in_contract, stopped_by
from tenderwright.notices import sort_notices
from tenderwright.notices.render import as_text, summary
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package
from tenderwright.reading.package import Files


def both_sides(files: Files) -> tuple[Compiled, OwnersSide] | None:
    """Give both sides of a package without mistakes; where there is one, say so and give None."""
    compiled = compile_package(files)
    owner = compile_owner(files, compiled)
    errors = [notice for notice in [*compiled.notices, *owner.notices] if notice.severity == "error"]
    if not errors:
        return compiled, owner
    sys.stderr.write(as_text(sort_notices(errors), files.texts))
    print(f"the package has {summary(errors)}; nothing was written", file=sys.stderr)
    return None


def contract_open(compiled: Compiled, owner: OwnersSide, files: Files) -> bool:
    """Tell whether something that the sums of the contract are made of is still `todo`, and say so."""
    found = stopped_by(open_in_contract(compiled, owner), files)
    if found:
        print("what bids and contract are made of is still `todo`; nothing was written", file=sys.stderr)
    return bool(found)
