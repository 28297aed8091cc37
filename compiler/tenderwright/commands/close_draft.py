"""`tenderwright close --draft`: the findings of a docking as far as the package knows them, in a new file."""

from __future__ import annotations

import sys
from pathlib import Path

from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse
from tenderwright.commands.todos import need, open_in_contract, stopped_by
from tenderwright.notices import sort_notices
from tenderwright.notices.render import as_text, summary
from tenderwright.pipeline import OwnersSide, compile_owner, compile_package, read
from tenderwright.pricing.in_dock.account import RunningAccount

HEAD = (
    "# What the docking found, did and cost, as far as the package knows it. CONFIDENTIAL: it holds what was paid.",
    "# Write what is still `todo`; delete a line that does not apply, and an entry of what was not done.",
    "# Blocks stand as they were planned: hold them against the dockmaster's record.",
)


def write_draft(root: Path, findings: Path) -> int:
    """Write the draft of the findings into a new file outside the package."""
    from tenderwright.documents.findings_draft.draft import findings_draft
    from tenderwright.linking.evaluation import bid_path
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.new_files import write_new
    from tenderwright.writing.yaml_file import yaml_text

    if findings.resolve().is_relative_to(root.resolve()):
        raise WrongUse(f"{findings} lies in the package, where no command looks for it; name a file beside it")
    if findings.exists():
        raise WrongUse(f"{findings} is there already; nothing was written")
    files = read(root)
    compiled = compile_package(files)
    owner = compile_owner(files, compiled)
    errors = [notice for notice in [*compiled.notices, *owner.notices] if notice.severity == "error"]
    if errors:
        sys.stderr.write(as_text(sort_notices(errors), files.texts))
        print(f"the package has {summary(errors)}; nothing was written", file=sys.stderr)
        return MISTAKES
    need(compiled, "particulars", "frames", "programme")
    if stopped_by(open_in_contract(compiled, owner), files):
        print("what bids and contract are made of is still `todo`; nothing was written", file=sys.stderr)
        return MISTAKES
    award = owner.papers.award
    bid = owner.papers.bids.get(bid_path(award.bid.name)) if award is not None else None
    made = _account(owner)
    draft = findings_draft(compiled.package, compiled.calculated, bid, made)
    try:
        write_new(findings, "\n".join((*HEAD, yaml_text(draft.data))).encode())
    except (WritingError, OSError) as error:
        raise WrongUse(f"the draft cannot be written: {error}") from error
    print(f"{findings}: {draft.asked} values are still `todo`")
    if made is None:
        print("  without an award and a file under owner/in-dock/ nothing is known of the account")
    for name in draft.surveys:
        print(f"  {name} holds the readings taken in dock, which are not asked again")
    if draft.not_measured:
        print(f"  no paper measures {', '.join(draft.not_measured)}: their final amounts stand as tendered")
    return CLEAN


def _account(owner: OwnersSide) -> RunningAccount | None:
    """Give the account on the last day that the papers from the dock tell of; None without any."""
    from tenderwright.pricing.in_dock.account import account

    if owner.ledger is None or owner.ledger.last is None:
        if owner.papers.award is not None and owner.papers.in_dock:
            raise WrongUse("the docking is closed already: history/ holds it")
        return None
    return account(owner.ledger, owner.ledger.last)
