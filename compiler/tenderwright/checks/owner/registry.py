"""The trade checks of the owner's papers, by the code of their notice, whose module each of them is."""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module

from tenderwright.checks.coherence.owner.registry import OWNER_COHERENCE
from tenderwright.checks.owner.context import OwnerCheck, OwnerContext
from tenderwright.notices import Notice, sort_notices
from tenderwright.notices.codes import OWNER_CHECK_CODES

OWNER_CHECKS: Mapping[str, OwnerCheck] = {
    code: import_module(f"tenderwright.checks.owner.{code.replace('-', '_')}").check for code in OWNER_CHECK_CODES
}


def run_owner_checks(context: OwnerContext) -> list[Notice]:
    """Run the trade checks of the owner's papers in turn and gather their notices, sorted by place."""
    checks = (*OWNER_CHECKS.values(), *OWNER_COHERENCE)
    return sort_notices(notice for check in checks for notice in check(context))
