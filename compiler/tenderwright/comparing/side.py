"""One side of a comparison: a package after every stage but composing."""

from __future__ import annotations

from dataclasses import dataclass

from tenderwright.calculations.value import Record
from tenderwright.linking.link import Links
from tenderwright.model.package import Package
from tenderwright.reading.package import Files


@dataclass(frozen=True)
class Side:
    """The files of a package and what the stages made of them, owner/ apart."""

    files: Files
    package: Package
    links: Links
    record: Record
