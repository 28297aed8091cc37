"""The trade checks, all of them, by the code of their notice, whose module each of them is."""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module

from tenderwright.checks.context import Check
from tenderwright.notices.codes import CHECK_CODES

CHECKS: Mapping[str, Check] = {
    code: import_module(f"tenderwright.checks.{code.replace('-', '_')}").check for code in CHECK_CODES
}
"""In the order in which the codes stand in the registry of notices."""
