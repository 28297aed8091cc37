"""Condition-found reports have numbers of their own, and changes answer reports that there are."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.closing.context import ClosingContext
from tenderwright.notices import Note, Notice, Place
from tenderwright.notices.suggest import did_you_mean


def check(context: ClosingContext) -> Iterator[Notice]:
    """Report numbers used twice, answers to no report, more days lost than there were, and another currency."""
    findings = context.findings
    first: dict[str, Place] = {}
    for number, found in enumerate(findings.conditions_found):
        at = context.at("conditions_found", number, "report")
        if found.report in first:
            notes = (Note("it is first listed here", first[found.report]),)
            yield Notice("duplicate-name", at, f"condition-found report {found.report} is used twice", notes)
        first.setdefault(found.report, at)
    for number, change in enumerate(findings.changes):
        if change.condition and change.condition not in first:
            at = context.at("changes", number, "condition")
            hints = did_you_mean(change.condition, first)
            yield Notice("dead-reference", at, f"there is no condition-found report {change.condition}", hints=hints)
    lost = sum(one.days for one in findings.days_lost)
    if lost > findings.days >= 0:
        message = f"{lost} days are lost of {findings.days} on blocks"
        yield Notice("out-of-bounds", context.at("days_lost"), message)
    if findings.readings and findings.readings_file:
        hints = ("put all of them in the file",)
        message = "there are readings here and in a file as well"
        yield Notice("unknown-key", context.source.key_place(("readings",)), message, hints=hints)
    if findings.readings_columns is not None and not findings.readings_file:
        message = "`readings_columns` says what a file holds, and `readings_file` names none"
        yield Notice("missing-key", context.source.key_place(("readings_columns",)), message)
    tender = context.package.tender
    if tender is not None and findings.currency and findings.currency != tender.currency:
        message = f"prices were tendered in {tender.currency}, not {findings.currency}"
        yield Notice("wrong-choice", context.at("currency"), message)
