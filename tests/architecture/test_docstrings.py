"""Every public thing says in one sentence what it is or does."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from .tree import Module, modules

Named = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef


def public(body: list[ast.stmt], inside: str = "") -> Iterator[tuple[str, Named]]:
    """Yield public classes and functions, and public methods of public classes."""
    for node in body:
        if isinstance(node, Named) and not node.name.startswith("_") and not is_overload(node):
            yield f"{inside}{node.name}", node
            if isinstance(node, ast.ClassDef):
                yield from public(node.body, f"{node.name}.")


def is_overload(node: Named) -> bool:
    """Tell whether a function only gives types to another of its name, which has the docstring."""
    return any(isinstance(mark, ast.Name) and mark.id == "overload" for mark in node.decorator_list)


def sentences_missing(module: Module) -> list[str]:
    """List what has no docstring whose first sentence ends with a full stop."""
    wrong = []
    hidden = {f"{cls.name}." for cls in module.tree.body if isinstance(cls, ast.ClassDef) and cls.name.startswith("_")}
    for name, node in public(module.tree.body):
        text = ast.get_docstring(node) or ""
        first = text.partition("\n\n")[0]
        if not re.match(r"[A-Z`].*[.]$", first, re.DOTALL) and not any(name.startswith(one) for one in hidden):
            wrong.append(f"{name}: {first!r}")
    return wrong


def test_every_public_thing_has_a_sentence() -> None:
    wrong = [f"{module.name}: {one}" for module in modules() for one in sentences_missing(module)]
    assert wrong == []


def test_every_module_says_what_it_is_for() -> None:
    for module in modules():
        text = (ast.get_docstring(module.tree) or "").rstrip()
        assert re.match(r"[A-Z`]", text), f"{module.name}: {text!r}"
        assert text.endswith((".", ":")), f"{module.name}: {text!r}"


def test_the_test_itself_finds_what_is_wrong() -> None:
    tree = ast.parse(
        'class A:\n    """No stop"""\n    def b(self): ...\n    def _c(self): ...\ndef d():\n    "D is."\n'
    )
    assert [one.split(":")[0] for one in sentences_missing(Module(Path("x.py"), tree))] == ["A", "A.b"]
