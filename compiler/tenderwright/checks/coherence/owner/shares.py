"""Likelihoods, contingency and correlations are such as can be meant.

Ground: money in hand is certain, and what is hoped for is not; a risk that is certain is a cost, and one that cannot
come is none (derived). Contingency below 1 % or above 60 % of an estimate: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.owner import OwnerPapers
from tenderwright.notices import Notice

CODE = "share-unlikely"
_EDGE = 1e-9
_LIKELY = {"in hand": (0.99, 1.0), "promised": (0.5, 1.0), "applied for": (0.02, 0.98), "hoped for": (0.01, 0.9)}
"""How likely money of each status may be; common practice, no source."""
_CONTINGENCY = (0.01, 0.6)
_DAMAGES = 0.3
"""Most that a yard pays for lateness, as a share of its price; commonly a tenth (common practice, no source)."""


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report shares that contradict what they are shares of."""
    yield from _funding(context.papers)
    yield from _risks(context.papers)
    yield from _rates(context.papers)
    yield from _damages(context)


def _funding(papers: OwnerPapers) -> Iterator[Notice]:
    for source in papers.funding.sources if papers.funding is not None else ():
        low, high = _LIKELY.get(source.status, (0.0, 1.0))
        if source.likelihood is not None and not low - _EDGE <= source.likelihood.si <= high + _EDGE:
            message = f"`{source.source}` is {source.status}, and {source.likelihood} likely"
            yield Notice(CODE, source.likelihood.at, message, hints=("mend the likelihood or the status",))


def _risks(papers: OwnerPapers) -> Iterator[Notice]:
    for risk in papers.risks.risks if papers.risks is not None else ():
        likelihood = risk.likelihood
        if likelihood is not None and likelihood.si >= 1:
            message = f"risk `{risk.risk}` is certain: its cost belongs into the estimate"
            yield Notice(CODE, likelihood.at, message)
        elif likelihood is not None and likelihood.si <= 0:
            yield Notice(CODE, likelihood.at, f"risk `{risk.risk}` cannot come, and is counted all the same")


def _rates(papers: OwnerPapers) -> Iterator[Notice]:
    rates = papers.rates
    if rates is None:
        return
    low, high = _CONTINGENCY
    if rates.contingency is not None and not low <= rates.contingency.share.si <= high:
        share = rates.contingency.share
        yield Notice(CODE, share.at, f"a contingency of {share} is not what a docking needs")
    simulation = rates.simulation
    if simulation is not None and simulation.across.si > simulation.within.si:
        message = (
            f"prices of different sections go together by {simulation.across}, and those of one by {simulation.within}"
        )
        yield Notice(CODE, simulation.across.at, message, hints=("what is alike goes together more",))


def _damages(context: OwnerContext) -> Iterator[Notice]:
    tender = context.package.tender
    most = tender.damages.most if tender is not None and tender.damages is not None else None
    if most is not None and most.si > _DAMAGES:
        yield Notice(CODE, most.at, f"damages up to {most} of the contract price are more than a yard can carry")
