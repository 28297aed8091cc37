"""Owner's papers in which every text is a word, and every amount a figure, that stands nowhere else."""

from __future__ import annotations

import re
from collections.abc import Mapping
from decimal import Decimal
from pathlib import Path
from typing import Any

import yaml

from tenderwright.pipeline import compile_package, read
from tenderwright.pricing.quantity import line_quantity
from tenderwright.pricing.sections import section_of
from tenderwright.reading.layout import YAML_FILES
from tenderwright.shapes.schemas import load_schema

WORD = "zanzikarree"
"""In every text field."""

_FIRST = 70_000_003
"""Amounts count up from here, in steps that leave no figure of eight digits near another."""


class Canaries:
    """Hands out words and amounts that are looked for afterwards."""

    def __init__(self) -> None:
        self.words: list[str] = []
        self.amounts: list[str] = []

    def word(self, field: str) -> str:
        """Give a word that tells which field it stood in."""
        self.words.append(f"{WORD}{len(self.words):03d} {field}")
        return self.words[-1]

    def amount(self, times: Decimal = Decimal(1)) -> str:
        """Give an amount, or that of so many units at it."""
        one = Decimal(f"{_FIRST + 1313 * len(self.amounts)}.{17 + len(self.amounts) % 80}")
        self.amounts.append(f"{one * times:.2f}")
        return self.amounts[-1]


def fill_owner(root: Path) -> Canaries:
    """Write the papers that an estimate rests on anew, with every field of every file filled, and all of it sound."""
    canaries = Canaries()
    compiled = compile_package(read(root))
    package = compiled.package
    assert package.tender is not None
    lines: dict[str, Decimal] = {}
    services = Decimal(0)
    for item in package.items:
        for line in item.lines if not item.withdrawn else ():
            quantity = line_quantity(line, compiled.calculated.record)
            units = quantity.number if quantity is not None else Decimal(1)
            lines[f"{item.number}.{line.line}"] = units
            services += units if section_of(item, line, package.tender).code == "A" else 0
    items = [item.number for item in package.items if item.lines]
    folder = root / "owner"
    (folder / "bids").mkdir(parents=True, exist_ok=True)
    (folder / "documents").mkdir(exist_ok=True)
    (folder / "rates.yaml").write_text(_rates(canaries, list(lines), items), "utf-8")
    (folder / "indices.yaml").write_text(_indices(canaries), "utf-8")
    (folder / "funding.yaml").write_text(_funding(canaries, items), "utf-8")
    (folder / "risks.yaml").write_text(_risks(canaries, items), "utf-8")
    facility = package.facilities[0].facility
    (folder / "bids" / f"{WORD}-yard.yaml").write_text(_bid(canaries, facility, lines, services), "utf-8")
    for path in (*folder.glob("*.yaml"), folder / "bids" / f"{WORD}-yard.yaml"):
        if path.stem in ("rates", "funding", "risks", f"{WORD}-yard"):
            path.write_text(f"tender: {package.tender.tender.number}\n{path.read_text('utf-8')}", "utf-8")
    (folder / "documents" / "letter.txt").write_text(canaries.word("a letter"), "utf-8")
    return canaries


def fill_owner_with_everything(root: Path) -> Canaries:
    """Write also every other kind of file that may lie under owner/, filled from its schema, sound or not."""
    canaries = fill_owner(root)
    for pattern, name in YAML_FILES.items():
        path = root / pattern.replace("*", f"{WORD}-file")
        if pattern.startswith("owner/") and not any(WORD in one.read_text("utf-8") for one in root.glob(pattern)):
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(yaml.safe_dump(_filled(load_schema(name), canaries), allow_unicode=True), "utf-8")
    return canaries


def _filled(schema: dict[str, Any], canaries: Canaries) -> Any:
    """Make data for a schema: a word wherever text is free, an amount wherever money is asked."""
    if "enum" in schema:
        return next(iter(schema["enum"]))
    for choice in ("anyOf", "oneOf"):
        if choice in schema:
            return _filled(schema[choice][0], canaries)
    if schema.get("money"):
        return float(canaries.amount())
    if schema.get("type") == "object":
        made = {name: _filled(below, canaries) for name, below in schema.get("properties", {}).items()}
        if isinstance(more := schema.get("additionalProperties"), dict):
            made[next(iter(schema.get("propertyNames", {}).get("examples", ())), f"{WORD}-key")] = _filled(
                more, canaries
            )
        return made
    if schema.get("type") == "array":
        return [_filled(schema["items"], canaries)]
    if schema.get("type") in ("number", "integer"):
        return 1
    if schema.get("type") == "boolean":
        return True
    if any(key in schema for key in ("pattern", "format", "quantity", "refers")):
        return next(iter(schema.get("examples", ())), "1")
    return canaries.word("free text")


def _rates(canaries: Canaries, lines: list[str], items: list[str]) -> str:
    before, built, *stated = lines
    rates = [
        f"  {line}: {{ low: {canaries.amount()}, rate: {canaries.amount()}, high: {canaries.amount()}, "
        f'basis: "{canaries.word("a basis")}", note: "{canaries.word("a note")}", evidence: letter }}'
        for line in stated
    ]
    return "\n".join(
        [
            "base_month: 2027-09",
            "lines:",
            *rates,
            f"  {before}: {{ history: {{ docking: docking-2021, work: docking and 11 days, index: {WORD}-index }}, "
            f'basis: "{canaries.word("a basis")}" }}',
            f"  {built}: {{ hours: 30 h, labour: {WORD}-labour, materials: {canaries.amount()}, "
            f'factors: [{{ factor: 1.5, why: "{canaries.word("a factor")}" }}], '
            f'quantity_low: 1 d, quantity_high: 90 d, basis: "{canaries.word("a basis")}" }}',
            f'labour: {{ {WORD}-labour: {{ rate: {canaries.amount()}, basis: "{canaries.word("of labour")}" }} }}',
            f"index: {WORD}-index",
            f'simulation: {{ within: 50 %, across: 20 %, trials: 1000, seed: 1, why: "{canaries.word("why these")}" }}',
            f'shared: {{ items: ["{items[0]}"], rule: equally }}',
            f'contingency: {{ share: 15 %, why: "{canaries.word("why")}" }}',
        ]
    )


def _indices(canaries: Canaries) -> str:
    return "\n".join(
        [
            "indices:",
            f"  - index: {WORD}-index",
            f'    name: "{canaries.word("name of an index")}"',
            f'    code: "{canaries.word("a code")}"',
            f'    publisher: "{canaries.word("a publisher")}"',
            "    adjusted: true",
            "    carries: 20 yr",
            '    months: { "2021-05": 100, "2027-09": 130 }',
            f'    notes: "{canaries.word("notes")}"',
        ]
    )


def _funding(canaries: Canaries, items: list[str]) -> str:
    return "\n".join(
        [
            "sources:",
            f"  - source: {WORD}-fund",
            f'    name: "{canaries.word("name of a fund")}"',
            f"    kept_back: {canaries.amount()}",
            f"    amount: {canaries.amount()}",
            "    status: applied for",
            "    likelihood: 65 %",
            f'    only: ["{items[0]}"]',
            "    eligible: [definite, measured, contingent]",
            "    match: 50 %",
            "    match_rule:",
            "      statuses: [in hand]",
            f"      excludes: [{WORD}-other]",
            f"      limits: [{{ sources: [{WORD}-other], share: 50 % }}]",
            "      in_kind: 25 %",
            f'      otherwise: "{canaries.word("a rule on match")}"',
            "    spend_by: 2029-12-31",
            "    decided: 2028-01-31",
            f'    public: "{canaries.word("name for donors")}"',
            f'    granted: [{{ work: "{items[0]}", amount: 1 }}]',
            "    notes: |",
            f"      {canaries.word('notes')}, see <item:{items[0]}>.",
            f"  - source: {WORD}-other",
            f'    name: "{canaries.word("name of another fund")}"',
            f"    amount: {canaries.amount()}",
            "    status: promised",
        ]
    )


def _risks(canaries: Canaries, items: list[str]) -> str:
    return "\n".join(
        [
            "risks:",
            f"  - risk: {WORD}-risk",
            f'    what: "{canaries.word("what goes wrong")}, see <item:{items[1]}>"',
            f'    item: "{items[1]}"',
            "    likelihood: 45 %",
            f"    low: {canaries.amount()}",
            f"    high: {canaries.amount()}",
            "    bears_on: cost",
            "    days_low: 1 d",
            "    days_high: 3 d",
            f'    answer: "{canaries.word("what is done")}"',
        ]
    )


def _bid(canaries: Canaries, facility: str, lines: Mapping[str, Decimal], services: Decimal) -> str:
    bid = [
        f"  {line}: {{ rate: {canaries.amount()}, status: priced, extension: {canaries.amount(times)}, "
        f'note: "{canaries.word("a bid line")}", as_written: "{canaries.word("as written")}" }}'
        for line, times in lines.items()
    ]
    return "\n".join(
        [
            f'yard: "{canaries.word("a yard")}"',
            f"facility: {facility}",
            "dock:",
            f'  name: "{canaries.word("a dock")}"',
            f'  limits: {{ tide: "{canaries.word("a tide")}" }}',
            f'  certificate: {{ by: "{canaries.word("a body")}", number: "{canaries.word("a number")}", '
            "valid_until: 2028-12-31 }",
            f'  lacking: ["{canaries.word("a figure")}"]',
            "received: 2027-12-09",
            f'file: "{canaries.word("a file")}"',
            f"sha256: {'0123456789abcdef' * 4}",
            f'edition: "{canaries.word("an edition")}"',
            "currency: EUR",
            "valid_until: 2028-03-09",
            f"section_totals: {{ A: {canaries.amount(services)} }}",
            f"base_total: {canaries.amount(services)}",
            f"total: {canaries.amount(services)}",
            "lines:",
            *bid,
            "exclusions:",
            f'  - text: "{canaries.word("an exclusion")}"',
            f'    lines: ["{next(iter(lines))}"]',
            "    kind: assumption",
            f'    effect: "{canaries.word("an effect")}"',
            "addenda: []",
            "site_visit: true",
            "dates_accepted: true",
            "terms_accepted: true",
            "signed: [offer]",
            "earliest_docking: 2028-04-03",
            "days: 37",
            "dock_days: 28",
            "answers:",
            f'  - ask: "{canaries.word("a question")}"',
            f'    answer: "{canaries.word("an answer")}"',
            f'doubts: ["{canaries.word("a doubt")}"]',
        ]
    )


def digits(text: str) -> str:
    """Give text with what parts thousands taken out, so that `70 000 003.17` is found as `70000003.17`."""
    return re.sub(r"(?<=\d)[\u00a0\u2009\u202f ,'](?=\d{3})", "", text)


def leaks_in(name: str, text: str, canaries: Canaries) -> list[str]:
    """List the canaries that stand in a text, each after the name of the text."""
    figures = set(re.findall(r"\d{8}", digits(text)))
    leaked = sorted({amount[:8] for amount in canaries.amounts} & figures)
    return [f"{name}: {what}" for what in [*leaked, *([WORD] if WORD in text.casefold() else [])]]
