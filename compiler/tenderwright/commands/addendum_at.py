"""Compile the addendum between two commits of a package."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from tenderwright.amending import Amended, Stated, amend, new_addenda, write_addendum
from tenderwright.commands.folder import WrongUse
from tenderwright.commands.progress import progress
from tenderwright.commands.yard_at import YardEdition
from tenderwright.comparing.compare import Comparison
from tenderwright.model.tender import Addendum
from tenderwright.pipeline import compile_package, read, stamp_of
from tenderwright.reading.at_commit import package_at

if TYPE_CHECKING:
    from tenderwright.writing.pdf import Typesetter


@dataclass(frozen=True)
class Sides:
    """A package as it stood at two commits, and the folders in which it is there for a while."""

    before: Path
    after: Path

    def compiled(self) -> tuple[Stated, Stated]:
        """Read and calculate both."""
        with progress("reading and calculating both"):
            before, after = (compile_package(read(folder)) for folder in (self.before, self.after))
            return Stated(before, stamp_of(before)), Stated(after, stamp_of(after))


@contextmanager
def both_at(root: Path, earlier: str, later: str) -> Iterator[Sides]:
    """Give the package as it stood at two commits; raises `NotAtCommit` where there is none."""
    with package_at(root, earlier) as one, package_at(root, later) as other:
        yield Sides(one, other)


def made(before: Stated, after: Stated, typesetter: Typesetter) -> tuple[Amended, YardEdition]:
    """Compose, prove and write the addendum between two sound packages; nothing is put on disk.

    Raises WrongUse where TO does not list one addendum more than FROM, or it cannot be written.
    """
    from tenderwright.writing.errors import WritingError

    entry = the_new_one(before, after)
    try:
        with progress("comparing, proving and typesetting the addendum"):
            amended = amend(before, after, entry)
            return amended, YardEdition(amended.amendment.form, write_addendum(amended, typesetter, after.state))
    except (WritingError, OSError) as error:
        raise WrongUse(f"the addendum cannot be written: {error}") from error


def proved(comparison: Comparison) -> str:
    """Say how much changed, and whether it can affect price."""
    count = comparison.proof.operations
    listed = "1 change listed" if count == 1 else f"{count} changes listed"
    price = "price can be affected" if comparison.bears_on_price else "price cannot be affected"
    return f"{listed}, and it is proved that nothing else changed; {price}"


def the_new_one(before: Stated, after: Stated) -> Addendum:
    """Give the one addendum that is new; raises WrongUse where there is none, or more than one."""
    if before.tender != after.tender:
        raise WrongUse(f"FROM is tender {before.tender} and TO is {after.tender}")
    listed = new_addenda(before, after)
    if len(listed) > 1:
        numbers = " and ".join(str(one.number) for one in listed)
        raise WrongUse(f"TO lists addenda {numbers} that FROM does not; make them one by one, each from its own commit")
    if not listed:
        number = max((one.number for one in after.addenda), default=0) + 1
        raise WrongUse(
            f"TO lists no addendum that FROM does not; add `- {{number: {number}, date: …, summary: …}}` to `addenda` "
            "in package.yaml and commit it"
        )
    return listed[0]
