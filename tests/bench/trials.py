"""Trials of cost and time of a large package: 200 lines, 150 activities, 100,000 trials."""

from __future__ import annotations

from collections.abc import Callable
from itertools import cycle, islice

import numpy as np

from tenderwright.model.owner import OwnerPapers
from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.planning.network import Link, Network, Node
from tenderwright.planning.outlook import outlook
from tenderwright.planning.schedule import Schedule, schedule
from tenderwright.planning.trials import trials
from tenderwright.pricing.price import Estimate
from tests.bench.generate import MARRAM
from tests.replacing import replace

LINES, ACTIVITIES, TRIALS = 200, 150, 100_000


def large() -> tuple[OwnerPapers, Estimate, Schedule]:
    """Make an estimate and a schedule of that size from those of the demonstration, each thing with its own name."""
    compiled = compile_package(read(MARRAM))
    side = compile_owner(read(MARRAM), compiled)
    if side.estimate is None or side.schedule is None:
        raise RuntimeError("the demonstration has no estimate or no programme")
    lines = tuple(
        replace(line, line=replace(line.line, line=f"{line.line.line}{count}"))
        for count, line in enumerate(islice(cycle(side.estimate.lines), LINES))
    )
    network = _longer(side.schedule.network)
    return side.papers, replace(side.estimate, lines=lines), schedule(network, compiled.package)


def _longer(network: Network) -> Network:
    """Put copies of the activities on blocks beside them until there are enough, between docking and undocking."""
    nodes, links = list(network.nodes), list(network.links)
    docking, undocking = network.of_kind("docking"), network.of_kind("undocking")
    dry = [node for node in network.nodes if node.phase == "dry" and node.kind == "work"]
    for count, node in enumerate(islice(cycle(dry), ACTIVITIES - len(nodes))):
        place = len(nodes)
        nodes.append(Node(f"{node.name}-{count}", node.title, node.item, node.kind, node.phase, node.duration))
        before = place - 5 if count >= 5 else docking
        links += [Link(before, place, "as the bench has it"), Link(place, undocking, "as the bench has it")]
    return Network(tuple(nodes), tuple(links), network.capacity)


def ours() -> Callable[[], object]:
    """Give the work of running the trials and summing them up."""
    papers, estimate, laid = large()
    assert len(estimate.lines) == LINES
    assert len(laid.network.nodes) == ACTIVITIES

    def work() -> object:
        return outlook(trials(papers, estimate, laid), estimate, laid.dock_days_tendered)

    return work


def by_numpy() -> Callable[[], object]:
    """Give the work of sampling as many numbers by numpy alone: two for each line, one for each activity."""
    generator = np.random.default_rng(1)

    def work() -> object:
        return [generator.standard_normal(TRIALS) for _ in range(2 * LINES + ACTIVITIES)]

    return work
