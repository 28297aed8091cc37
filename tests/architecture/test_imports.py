"""Data flows one way: a stage imports those before it, never those after."""

from __future__ import annotations

import pytest

from .tree import BESIDE, FOR_ALL, STAGES, Module, modules

NUMBERED = {stage: number for number, stage in enumerate(STAGES)} | {"planning": STAGES.index("pricing")}
IN_STAGES = [module for module in modules() if module.folder in STAGES]
KERNELS = [
    module
    for module in modules()
    if module.folder == "calculations"
    and not {"ship", "steps"} & set(module.path.parts)
    and module.path.name not in ("calculate.py", "value.py")
]


def by_name(module: Module) -> str:
    return module.name


def test_every_folder_is_a_stage_or_for_all() -> None:
    folders = {module.folder for module in modules()} - {""}
    assert folders == {*STAGES, *FOR_ALL, *BESIDE}


@pytest.mark.parametrize("module", IN_STAGES, ids=by_name)
def test_imports_point_up_the_table(module: Module) -> None:
    own = NUMBERED[module.folder]
    for parts in module.ours:
        if parts[0] in STAGES:
            assert NUMBERED[parts[0]] <= own, f"{module.name} imports {'.'.join(parts)}"
        elif module.folder != "commands":
            assert parts[0] in (*FOR_ALL, "__version__"), f"{module.name} imports {'.'.join(parts)}"


@pytest.mark.parametrize("module", [m for m in modules() if m.folder in FOR_ALL], ids=by_name)
def test_what_is_for_all_imports_no_stage(module: Module) -> None:
    for parts in module.ours:
        assert parts[0] in FOR_ALL, f"{module.name} imports {'.'.join(parts)}"


@pytest.mark.parametrize("module", KERNELS, ids=by_name)
def test_kernels_know_no_ship_and_touch_no_file(module: Module) -> None:
    for parts in module.ours:
        assert parts[0] in ("calculations", "quantities"), f"{module.name} imports {'.'.join(parts)}"
        assert parts[1:2] != ["ship"], f"{module.name} imports {'.'.join(parts)}"
    assert not {"os", "pathlib", "sys", "subprocess"} & {name.split(".")[0] for name in module.imports}


def outside(module: Module) -> set[str]:
    return {name.split(".")[0] for name in module.imports}


def test_only_writing_and_commands_know_the_tools_of_writing() -> None:
    tools = {"jinja2", "weasyprint", "openpyxl", "rich", "watchfiles"}
    known = {module.name for module in modules() if tools & outside(module)}
    elsewhere = {name for name in known if name.split("/")[0] not in ("writing", "commands")}
    assert elsewhere == {"reading/workbook/cells.py"}, "but for reading the workbooks that yards return"


def test_only_few_touch_the_disk() -> None:
    """Reading reads, commands and writing write; schemas, units and explanations are read from beside the code."""
    allowed = {"reading", "commands", "writing", "starter", "shapes", "quantities", "notices", ""}
    touching = {module.name for module in modules() if {"os", "pathlib", "subprocess", "socket"} & outside(module)}
    assert {name for name in touching if name.split("/")[0] not in allowed and "/" in name} == set()
