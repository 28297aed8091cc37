"""`tenderwright verify`: rebuild a parcel from the commits that it names, and say whether it is the same.

Away from the museum's repository a parcel is held against its own manifest alone. The archive of a closed tender is
held against its own list of checksums.
"""

from __future__ import annotations

import hashlib
import sys
from argparse import ArgumentParser, Namespace
from dataclasses import dataclass
from pathlib import Path

from tenderwright import __version__
from tenderwright.commands.addendum_at import both_at, made
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.typesetter import need_typesetter
from tenderwright.commands.yard_at import YardAt, YardEdition, yard_at
from tenderwright.notices.render import as_text, summary
from tenderwright.reading.archived import LIST, archived
from tenderwright.reading.at_commit import NotAtCommit
from tenderwright.reading.git import Refused, repository_of
from tenderwright.reading.issued import Issued, issued
from tenderwright.reading.parcel import BadParcel, Parcel, read_parcel


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument(
        "parcel",
        type=Path,
        metavar="PARCEL",
        help="the zip archive that a yard was sent, or a folder of owner/archive/",
    )
    parser.add_argument(
        "--in",
        dest="folder",
        type=Path,
        default=None,
        metavar="DIR",
        help="the package in its repository (default: here; outside git, the parcel is compared with its own manifest)",
    )


def run(arguments: Namespace) -> int:
    """Verify a parcel: one sentence of verdict, then what there is to say of it."""
    if arguments.parcel.is_dir():
        return _say(_archive(arguments.parcel))
    need_typesetter()
    try:
        root = package_folder(arguments.folder) if arguments.folder is not None else _package_here()
        parcel = read_parcel(arguments.parcel)
    except (BadParcel, Refused) as error:
        raise WrongUse(str(error)) from error
    name = f"`{arguments.parcel.name}`"
    if root is None:
        return _say(_alone(name, parcel))
    yard = _addendum_at(root, parcel) if parcel.amends else yard_at(root, parcel.commit)
    tender = yard.compiled.package.tender
    if tender is not None and tender.tender.number != parcel.tender:
        at = f"at commit {parcel.commit[:12]}"
        raise WrongUse(f"{at} `{root}` holds tender {tender.tender.number}, and the parcel is of another")
    verdict = _unverified(name, parcel, yard) if yard.edition is None else _compared(name, parcel, yard.edition)
    return _say(verdict, *_recorded(root, parcel, verdict))


def _package_here() -> Path | None:
    """Give the package where we stand, in its repository; None where there is none, or it is outside git."""
    try:
        root = package_folder(None)
    except WrongUse:
        return None
    return root if repository_of(root) is not None else None


def _addendum_at(root: Path, parcel: Parcel) -> YardAt:
    """Compile anew the addendum between the two commits that a parcel names, where both are sound."""
    from tenderwright.writing.pdf import Typesetter

    try:
        with both_at(root, parcel.amends, parcel.commit) as both:
            before, after = both.compiled()
            for one in (before, after):
                if not one.compiled.sound or one.compiled.package.todos:
                    return YardAt(one.compiled, one.state)
            return YardAt(after.compiled, after.state, made(before, after, Typesetter())[1])
    except NotAtCommit as error:
        raise WrongUse(str(error)) from error


@dataclass(frozen=True)
class Verdict:
    """What is said of a parcel."""

    same: bool
    sentence: str
    lines: tuple[str, ...] = ()


def _say(verdict: Verdict, *more: str) -> int:
    print(verdict.sentence)
    for line in [*verdict.lines, *more]:
        print(f"  {line}")
    return CLEAN if verdict.same else MISTAKES


def _archive(folder: Path) -> Verdict:
    """Hold the archive of a closed tender against its list, and say what that shows and what it does not."""
    found = archived(folder)
    name = f"`{folder.name}`"
    if not found.list_sha256:
        raise WrongUse(f"`{folder}` is not the archive of a closed tender, since there is no {LIST} in it")
    further = (
        f"SHA-256 of its {LIST}: {found.list_sha256}",
        "compare that with the one written down when the archive was made, since whoever alters a file can write the "
        "list again",
    )
    if found.altered:
        told = [f"{path} {how}" for path, how in found.altered.items()]
        wrong = len(told)
        sentence = f"Not whole: the archive {name} is not what its own list has (files that differ: {wrong})."
        return Verdict(False, sentence, (*told, *further))
    sentence = f"Whole: each of the {found.files} files in the archive {name} is as its list has it, and none is added."
    return Verdict(True, sentence, further)


def _alone(name: str, parcel: Parcel) -> Verdict:
    """Hold a parcel against its own manifest, and say what that shows and what it does not."""
    altered = _altered(parcel)
    names = f"tender {parcel.tender}, commit {parcel.commit[:12]}"
    checksum = hashlib.sha256(parcel.content).hexdigest()
    further = (
        "whether the museum issued it, this cannot show, since whoever alters a file can write the manifest again: ask "
        f"the museum for the parcel's SHA-256, which is {checksum} here, or let it run `tenderwright verify` in its "
        "repository",
    )
    if altered:
        wrong = len(altered)
        sentence = f"Not whole: {name} ({names}) is not what its own manifest lists (files that differ: {wrong})."
        return Verdict(False, sentence, (*altered, *further))
    sentence = f"Whole: each file in {name} ({names}) is as its own manifest lists it, and none is missing or added."
    return Verdict(True, sentence, ("so nothing in it was damaged or altered by itself since it was packed", *further))


def _unverified(name: str, parcel: Parcel, yard: YardAt) -> Verdict:
    """Say that the package of that commit has mistakes under this compiler, so that nothing can be compared.

    Where another compiler wrote the parcel they are of its format, and the first stands for all.
    """
    notices = yard.compiled.notices
    errors = [notice for notice in notices if notice.severity == "error"]
    told = notices if parcel.compiler == __version__ else errors[:1]
    sys.stderr.write(as_text(told, yard.compiled.files.texts))
    commit = _commits(parcel)
    sentence = f"Not verified: {name} cannot be rebuilt, since this compiler says of {commit}: {summary(notices)}."
    return Verdict(False, sentence, (*_altered(parcel), *_compiler(parcel)))


def _compared(name: str, parcel: Parcel, yard: YardEdition) -> Verdict:
    from tenderwright.writing.differences import differences, first_different_byte

    content = yard.written.files[yard.parcel]
    commit = _commits(parcel)
    if content == parcel.content:
        return Verdict(True, f"The same, byte for byte: {name} is what {commit} gives.")
    made = {path: held for path, held in yard.written.files.items() if path != yard.parcel}
    found = differences(parcel.members, made)
    if not found:
        at = first_different_byte(parcel.content, content)
        sentence = f"Different: every file in {name} is what {commit} gives, but the archive around them is not."
        return Verdict(False, sentence, (f"the archive differs first at byte {at}", *_compiler(parcel)))
    sentence = f"Different: {name} is not what {commit} gives (files that differ: {len(found)} of {len(made)})."
    altered = _altered(parcel)
    if not altered:
        altered = ["each file has the checksum of the parcel's own manifest, so none was altered after it was packed"]
    where = [f"{path} {said}" for path, lines in found.items() for said in lines]
    return Verdict(False, sentence, (*altered, *where, *_compiler(parcel)))


def _commits(parcel: Parcel) -> str:
    """Name the commit that a parcel is of, and of an addendum first that of what it amends."""
    first = f"the way from commit {parcel.amends[:12]} to " if parcel.amends else ""
    return f"{first}commit {parcel.commit[:12]}"


def _altered(parcel: Parcel) -> list[str]:
    return [f"{path} {how}" for path, how in parcel.altered().items()]


def _compiler(parcel: Parcel) -> list[str]:
    if parcel.compiler == __version__:
        return []
    wrote = f"compiler {parcel.compiler}" if parcel.compiler else "a compiler that did not say its version"
    return [f"the parcel was written by {wrote}, and is compared with what {__version__} writes"]


def _recorded(root: Path, parcel: Parcel, verdict: Verdict) -> list[str]:
    """Say which tags record it, whether this is the parcel that went out, and by what it was made.

    Only the compiler that made a parcel proves it for certain, so where this one does not, that one is named.
    """
    checksum = hashlib.sha256(parcel.content).hexdigest()
    found = []
    for issue in issued(root):
        if (issue.commit, issue.amends) != (parcel.commit, parcel.amends):
            continue
        which = "this very parcel" if issue.parcel_sha256 == checksum else f"parcel SHA-256 {issue.parcel_sha256}"
        found.append(f"tag `{issue.tag}` records {issue.what} of {issue.tender} at that commit, with {which}")
        if not verdict.same:
            found.append(_made_by(issue))
    return found


def _made_by(issue: Issued) -> str:
    if not issue.source:
        return f"it was made by tenderwright {issue.compiler}; the tag does not say from where that can be installed"
    again = "install that into an environment of its own, and verify with it"
    return f"it was made by tenderwright {issue.compiler}, by the tag `{issue.source}`: {again}"
