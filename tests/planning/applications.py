"""Applications worked out over the demonstration and over the starter, with the costs that trials give."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from pathlib import Path

from tenderwright.model.build import Name, Reference
from tenderwright.model.funding import Funding
from tenderwright.model.grant import Grant
from tenderwright.model.profile import Profile, shipped_profiles
from tenderwright.notices import Place
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read
from tenderwright.planning.application import Application, application
from tenderwright.planning.outlook import CostOutlook, outlook
from tenderwright.planning.trials import trials
from tenderwright.pricing.price import Estimate
from tests.replacing import replace

MARRAM = Path(__file__).parents[2] / "package_src"
HERE = Place("owner/grants/test.yaml")


@dataclass(frozen=True)
class Costed:
    """A package with its estimate and what the trials make of it."""

    compiled: Compiled
    owner: OwnersSide
    outlook: CostOutlook

    @property
    def estimate(self) -> Estimate:
        """Give the estimate."""
        assert self.owner.estimate is not None
        return self.owner.estimate

    def work_out(self, grant: Grant, profile: Profile, funding: Funding | None = None) -> Application:
        """Work an application out, with the sources of the demonstration where no others are given."""
        return application(grant, profile, self.estimate, self.outlook, funding or self.owner.papers.funding)


@cache
def marram() -> Costed:
    """Compile the demonstration and run its trials, fewer of them."""
    files = read(MARRAM)
    compiled = compile_package(files)
    owner = compile_owner(files, compiled)
    assert owner.estimate is not None
    assert owner.papers.rates is not None
    assert owner.papers.rates.simulation is not None
    rates = replace(owner.papers.rates, simulation=replace(owner.papers.rates.simulation, trials=2000))
    run = trials(replace(owner.papers, rates=rates), owner.estimate, owner.schedule)
    return Costed(compiled, owner, outlook(run, owner.estimate, None).cost)


@cache
def profiles() -> Mapping[str, Profile]:
    """Give the profiles that come with the compiler."""
    return shipped_profiles()


def name(text: str) -> Name:
    """Name something as a file of the owner's would."""
    return Name(text, HERE)


def items(*numbers: str) -> tuple[Reference, ...]:
    """Refer to items."""
    return tuple(Reference("item", number, HERE) for number in numbers)


def grant(
    profile: str,
    *numbers: str,
    source: str = "",
    asked: str = "",
    confidence: str = "P80",
    categories: Mapping[str, str] | None = None,
) -> Grant:
    """Make an application of items."""
    return Grant(
        profile=name(profile),
        title="An application",
        here=HERE,
        source=name(source) if source else None,
        asked=Decimal(asked) if asked else None,
        items=items(*numbers),
        confidence=confidence,
        categories={number: name(category) for number, category in (categories or {}).items()},
    )
