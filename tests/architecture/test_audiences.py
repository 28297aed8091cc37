"""No code of the yard's side can name the owner's: what composes for the yard reaches nothing that knows money."""

from __future__ import annotations

from .tree import Module, modules

BEGINNINGS = (
    "documents/editions.py",
    "documents/desk.py",
    "documents/addendum.py",
    "documents/dock_sheet.py",
    "documents/inspection_plan.py",
)
"""Where the papers that a yard reads are composed."""

OWNERS = (
    "documents/owner/",
    "documents/drawings/at_facilities.py",
    "documents/drawings/cradle_plan.py",
    "documents/grant",
    "documents/bid_report",
    "documents/statement",
    "planning/",
    "pricing/price.py",
    "pricing/in_dock/",
    "pricing/bids/",
    "model/owner.py",
    "model/rates.py",
    "model/funding.py",
    "checks/owner/",
)
"""What only the owner's papers are made of."""


YARDS = (
    "planning/due.py",
    "planning/inspection/__init__.py",
    "planning/inspection/points.py",
    "planning/inspection/register.py",
)
"""What the yard may read although it stands beside the owner's: the days that the tender sets, and what it inspects."""


def composing(beginnings: tuple[str, ...]) -> dict[str, Module]:
    """Give every module of composing that some lead to, at the top or inside a function."""
    known = {module.name: module for module in modules() if module.folder == "documents"}
    found: dict[str, Module] = {}
    waiting = [known[name] for name in beginnings]
    while waiting:
        module = waiting.pop()
        if module.name not in found:
            found[module.name] = module
            waiting += [known[name] for name in files_named(module) & set(known)]
    return found


def files_named(module: Module) -> set[str]:
    """Give the files that the imports of a module may mean: the last of each is a module, or a name in one."""
    paths = (path for parts in module.ours for path in (parts, parts[:-1]))
    return {f"{'/'.join(path)}.py" for path in paths} & {one.name for one in modules()}


def named_of_the_owners(module: Module) -> list[str]:
    """List what a module imports of the owner's."""
    return sorted(name for name in files_named(module) if name.startswith(OWNERS) and name not in YARDS)


def test_the_yards_side_names_nothing_of_the_owners() -> None:
    yards = composing(BEGINNINGS)
    assert {"documents/parts/item.py", "documents/form.py", "documents/drawings/docking_profile.py"} <= set(yards)
    assert {name: found for name, module in yards.items() if (found := named_of_the_owners(module))} == {}


def test_everything_that_is_called_the_owners_exists() -> None:
    names = [module.name for module in modules()]
    assert [one for one in OWNERS if not any(name.startswith(one) for name in names)] == []


def test_the_test_itself_finds_what_is_named() -> None:
    owners = composing(("documents/owner/book.py",))
    assert "documents/owner/estimate.py" in owners
    assert "pricing/price.py" in named_of_the_owners(owners["documents/owner/estimate.py"])
