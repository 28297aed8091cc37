"""`tenderwright close --draft`: the findings of a docking as far as the package knows them, in a new file."""

from __future__ import annotations

from pathlib import Path

from tenderwright.commands.both_sides import both_sides, contract_open
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse
from tenderwright.commands.todos import need
from tenderwright.pipeline import OwnersSide, read
from tenderwright.pricing.in_dock.account import RunningAccount

HEAD = (
    "# What the docking found, did and cost, as far as the package knows it. CONFIDENTIAL: it holds what was paid.",
    "# Write what is still `todo`; delete a line that does not apply, and an entry of what was not done.",
    "# Blocks stand as they were planned: compare them with the dockmaster's record.",
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
    sides = both_sides(files)
    if sides is None:
        return MISTAKES
    compiled, owner = sides
    need(compiled, "particulars", "frames", "programme")
    if contract_open(compiled, owner, files):
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
