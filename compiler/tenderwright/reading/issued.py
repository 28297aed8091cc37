"""The earlier issues of tenders and their addenda, as annotated git tags record them."""

from __future__ import annotations

import re
from datetime import datetime
from pathlib import Path

from msgspec import Struct

from tenderwright.reading.git import repository_of

_FORMAT = "%(refname:strip=2)%00%(*objectname)%00%(contents:body)%00"
_LINE = re.compile(r"^([a-z_0-9]+): (.+)$", re.MULTILINE)
_COMMIT = re.compile(r"[0-9a-f]{40}(?:[0-9a-f]{24})?")
_SHA256 = re.compile(r"[0-9a-f]{64}")


class Issued(Struct, frozen=True):
    """One issue of a tender, or one addendum to it: what its tag records."""

    tag: str
    tender: str
    number: int
    """Of the issue, from 1, within its tender; of an addendum, that of the issue it follows, or 0 for none."""
    commit: str
    date: datetime
    """When the commit was made."""
    edition_hash: str
    """Of the lines of the price form."""
    parcel: str
    """Name of the parcel's file."""
    parcel_sha256: str
    manifest_sha256: str
    compiler: str
    """Version of the compiler that wrote it."""
    source: str = ""
    """What pip installs to have that very compiler; empty where that was not known."""
    addendum: int | None = None
    """Number of the addendum, or of the last one that an issue takes in, where there is one."""
    amends: str = ""
    """Of an addendum, the commit of what yards had before it; empty for an issue."""

    @property
    def what(self) -> str:
        """Say what it is: `issue 2` or `addendum 1`."""
        return f"addendum {self.addendum}" if self.amends else f"issue {self.number}"

    @property
    def order(self) -> tuple[str, int, int, bool]:
        """Give its place among those that are recorded: by tender, then as they went out."""
        return self.tender, self.number, self.addendum or 0, not self.amends


def tag_message(issue: Issued, title: str) -> str:
    """Write what the tag of an issue says: a heading, then one `key: value` on each line."""
    pairs = {
        "tender": issue.tender,
        "number": str(issue.number),
        **({"addendum": str(issue.addendum)} if issue.addendum is not None else {}),
        "commit": issue.commit,
        **({"amends": issue.amends} if issue.amends else {}),
        "date": issue.date.isoformat().replace("+00:00", "Z"),
        "edition_hash": issue.edition_hash,
        "parcel": issue.parcel,
        "parcel_sha256": issue.parcel_sha256,
        "manifest_sha256": issue.manifest_sha256,
        "compiler": issue.compiler,
        **({"compiler_source": issue.source} if issue.source else {}),
    }
    lines = [f"{issue.tender}, {issue.what}: {title}", "", *(f"{key}: {text}" for key, text in pairs.items())]
    return "".join(f"{one_line(line)}\n" for line in lines)


def one_line(text: str) -> str:
    """Give a text on one line, as a tag records it."""
    return " ".join(text.split())


def issued(root: Path) -> tuple[Issued, ...]:
    """Read the issues and addenda that the annotated tags of a repository record, of every tender, as they went out.

    A tag that records no issue in full, or another commit than it stands at, is some other tag. Outside git there
    are none. Raises `Refused` where git does not read the repository.
    """
    repository = repository_of(root)
    if repository is None:
        return ()
    fields = (repository.answer("for-each-ref", f"--format={_FORMAT}", "refs/tags") or "").split("\0")
    tags = zip(fields[0::3], fields[1::3], fields[2::3], strict=False)
    found = [_issue_of(name.removeprefix("\n"), commit, message) for name, commit, message in tags if commit]
    return tuple(sorted((issue for issue in found if issue is not None), key=lambda issue: issue.order))


def _issue_of(tag: str, commit: str, message: str) -> Issued | None:
    """Read what stands below the heading of a tag; None where it is no record of an issue at that commit."""
    said = dict(reversed(_LINE.findall(message)))
    try:
        issue = Issued(
            tag=tag,
            tender=said["tender"],
            number=int(said["number"]),
            commit=said["commit"],
            date=datetime.fromisoformat(said["date"]),
            edition_hash=said["edition_hash"],
            parcel=said["parcel"],
            parcel_sha256=said["parcel_sha256"],
            manifest_sha256=said["manifest_sha256"],
            compiler=said["compiler"],
            source=said.get("compiler_source", ""),
            addendum=int(said["addendum"]) if "addendum" in said else None,
            amends=said.get("amends", ""),
        )
    except (KeyError, ValueError):
        return None
    words = (issue.tag, issue.tender, issue.edition_hash, issue.parcel, issue.compiler, issue.source)
    sound = (
        all(word.isprintable() for word in words)
        and _COMMIT.fullmatch(issue.commit)
        and _SHA256.fullmatch(issue.parcel_sha256)
        and issue.date.tzinfo
        and (issue.number > 0 or issue.amends)
        and (not issue.amends or (_COMMIT.fullmatch(issue.amends) and issue.addendum is not None))
    )
    return issue if sound and issue.commit == commit else None
