"""Compose the history entry of a docking from its findings, with every quantity as it was written."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Any

from tenderwright.model.findings import Findings, LinePaid
from tenderwright.model.found import CoatApplied, FilledRow
from tenderwright.model.package import Package
from tenderwright.model.table_rows import rows_of
from tenderwright.pricing.final_account import AccountRow, FinalAccount, line_named
from tenderwright.pricing.money import tendered

SHARED = ("renewed", "rivets", "timber", "valves", "clearances", "tank_tests")
"""What stands in a history entry just as it stands in the findings."""


def history_entry(
    findings: Findings, data: Mapping[str, Any], package: Package, left_open: Sequence[str] = ()
) -> dict[str, Any]:
    """Give the entry as plain data; `data` are the findings as read. What was paid is the owner's and not in it.

    `left_open` names what the inspection plan and the register of openings still had open at the end.
    """
    on_docking, on_undocking = data.get("on_docking", {}), data.get("on_undocking", {})
    entry = {
        "docking": findings.docking,
        "tender": package.number,
        "yard": findings.yard,
        "place": data.get("place"),
        "dock_type": findings.dock_type,
        "docked": data["dates"]["docked"],
        "undocked": data["dates"]["undocked"],
        "drafts": on_docking.get("drafts"),
        "undocking_drafts": on_undocking.get("drafts"),
        "soundings": on_docking.get("soundings"),
        "undocking_soundings": on_undocking.get("soundings"),
        "blocks": data.get("blocks"),
        "not_painted": data.get("not_painted"),
        "plugs": data.get("plugs"),
        "findings": [_finding(one) for one in data.get("conditions_found", ())],
        **{key: data.get(key) for key in SHARED},
        "tables": [
            {"table": one.table, "row": one.row, "cells": dict(one.cells)} for one in rows_filled(findings, package)
        ],
        "coatings": [_coating(findings, n, one) for n, one in enumerate(data.get("paint", ()))],
        "anodes": [_anode(one) for one in data.get("anodes", ())],
        "deferred": data["deferred"],
        "left_open": list(left_open),
        "days": findings.days,
        "days_lost": data.get("days_lost"),
        "hours_used": [_hours(package, one) for one in data.get("hours_used", ())],
        "guarantee_until": data.get("guarantee_until"),
        "lessons": _stripped(data.get("lessons")),
        "photographs": data.get("photographs"),
    }
    return {key: value for key, value in entry.items() if value not in (None, [], {}, "") or key == "deferred"}


def rows_filled(findings: Findings, package: Package) -> list[FilledRow]:
    """Give the rows of tables as filled, each told by words, for numbers of items may mean other work one day."""
    found = []
    for one in findings.tables:
        item = package.item_by_name[one.item.name]
        table = next(table for table in item.tables if table.table.name == one.table)
        row = next(row for row in rows_of(package, item, table) if row.row == one.row)
        found.append(FilledRow(table=table.title, row=row.name, cells=one.cells))
    return found


def _stripped(text: Any) -> Any:
    return text.strip() if isinstance(text, str) else text


def _finding(found: Mapping[str, Any]) -> dict[str, Any]:
    done = _stripped(found.get("done") or found.get("decision"))
    entry = {"where": found["where"], "found": _stripped(found["found"]), "done": done, "extent": found.get("extent")}
    return {key: value for key, value in entry.items() if value is not None}


def _coating(findings: Findings, number: int, log: Mapping[str, Any]) -> dict[str, Any]:
    entry = {
        "zone": log["zone"],
        "system": ", ".join(_coat(coat) for coat in findings.paint[number].coats),
        "area": log.get("area"),
        "preparation": log["grade"],
        "profile": log.get("profile"),
        "salts": log.get("salts"),
        "dust": log.get("dust"),
        "coats": log["coats"],
    }
    return {key: value for key, value in entry.items() if value is not None}


def _coat(coat: CoatApplied) -> str:
    if coat.dft is None:
        return coat.product
    over = " with what is under it" if coat.dft.of == "all so far" else ""
    return f"{coat.product} {coat.dft.mean}{over}"


def _anode(found: Mapping[str, Any]) -> dict[str, Any]:
    keys = ("anode", "left", "left_mass", "fitted", "alloy")
    entry = {"what": f"anode {found['anode']}", **{key: found[key] for key in keys if key in found}}
    entry["renewed"] = 1 if "fitted" in found else 0
    return entry


def _hours(package: Package, used: Mapping[str, Any]) -> dict[str, Any]:
    _, line = line_named(package, used["line"])
    entry = {"work": line.text, "used": used["hours"]}
    if line.quantity is not None:
        entry["offered"] = line.quantity.text
    return entry


def paid_rate(paid: LinePaid) -> Decimal | None:
    """Give what was paid for a unit: final / quantity measured, to four decimals; None without a quantity."""
    quantity = paid.quantity.decimal if paid.quantity is not None else Decimal(0)
    return tendered(paid.final / quantity) if quantity else None


def closing_account(
    findings: Findings, data: Mapping[str, Any], account: FinalAccount, package: Package
) -> dict[str, Any]:
    """Give the final account as plain data, for the owner's papers."""
    told = zip(account.lines, data["prices"], findings.prices, strict=True)
    lines = [_line(row, written, paid) for row, written, paid in told]
    changes = [
        {key: one[key] for key in ("change", "line", "cause", "what", "amount")} for one in data.get("changes", ())
    ]
    whole = account.whole
    totals = {"contract": whole.awarded, "changes": whole.changes, "final": whole.final}
    entry: dict[str, Any] = {"docking": findings.docking, "tender": package.number, "currency": account.currency}
    entry |= {"lines": lines, "changes": changes}
    return {**{key: value for key, value in entry.items() if value}, "totals": totals}


def _line(row: AccountRow, written: Mapping[str, Any], paid: LinePaid) -> dict[str, Any]:
    entry = {
        "line": row.name,
        "work": row.title,
        "kind": row.kind,
        "quantity": written.get("quantity"),
        "estimate": row.estimate,
        "bid": row.bid,
        "contract": row.awarded,
        "changes": row.changes,
        "final": row.final,
        "rate": paid_rate(paid),
    }
    return {key: value for key, value in entry.items() if value is not None}
