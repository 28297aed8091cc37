"""A short whole file that fits a schema, made from the examples at its keys."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import yaml

Schema = Mapping[str, Any]
FEW = 2
"""Keys that are shown of what needs none."""
MOST = 3
"""Keys up to which a file that needs hardly any is filled, so that it says something."""

_ROWS = 3
"""From so many entries on a list of plain ones is a table."""


def _is_flat(node: yaml.MappingNode) -> bool:
    return all(isinstance(value, yaml.ScalarNode) for _, value in node.value)


class _Plain(yaml.SafeDumper):
    """Writes text without quotes where a package reads it as text, dates among it."""

    def increase_indent(self, flow: bool = False, indentless: bool = False) -> None:
        """Set the entries of a list in from the key that holds them."""
        super().increase_indent(flow, False)

    def represent_sequence(self, tag: str, sequence: Any, flow_style: bool | None = None) -> yaml.SequenceNode:
        """Set a list of plain values on one line, and each row of a table."""
        node = super().represent_sequence(tag, sequence, flow_style)
        rows = [entry for entry in node.value if isinstance(entry, yaml.MappingNode) and _is_flat(entry)]
        node.flow_style = all(isinstance(entry, yaml.ScalarNode) for entry in node.value)
        for row in rows if len(rows) >= _ROWS else ():
            row.flow_style = True
        return node


_Plain.yaml_implicit_resolvers = {
    letter: [(tag, form) for tag, form in found if not tag.endswith(":timestamp")]
    for letter, found in yaml.SafeDumper.yaml_implicit_resolvers.items()
}


def written_example(schema: Schema) -> str:
    """Write an example of a file as YAML."""
    found = example_of(schema)
    if len(found) < FEW:
        left = [key for key in schema["properties"] if key not in found and key != "tender"][: MOST - len(found)]
        found |= {key: example_of(schema["properties"][key]) for key in left}
        found = {key: found[key] for key in schema["properties"] if key in found}
    text: str = yaml.dump(found, Dumper=_Plain, sort_keys=False, allow_unicode=True, width=110)
    return text


def example_of(schema: Schema) -> Any:
    """Give data that fit a schema: what is needed, and of what needs nothing its first keys."""
    if schema.get("examples"):
        return schema["examples"][0]
    if "enum" in schema:
        return schema["enum"][0]
    if "anyOf" in schema:
        return example_of(schema["anyOf"][0])
    match schema.get("type"):
        case "object":
            return _record(schema)
        case "array":
            return [example_of(schema["items"]) for _ in range(max(1, schema.get("minItems", 1)))]
        case "boolean":
            return True
        case "integer" | "number":
            return max(1, schema.get("minimum", 1))
    if "quantity" in schema:
        return next(iter(schema.get("or", ())), "1 m")
    return schema.get("refers", "as it is").replace(" ", "-")


def _record(schema: Schema) -> dict[str, Any]:
    properties, required = schema.get("properties", {}), list(schema.get("required", ()))
    extra = schema.get("additionalProperties")
    if not properties and isinstance(extra, Mapping):
        names = schema.get("propertyNames", {})
        return {str(next(iter(names.get("examples") or names.get("enum") or ("main",)))): example_of(extra)}
    shown = required or list(properties)[:FEW]
    # The version of the format is needed before there is a schema.
    shown += [key for key, below in properties.items() if below.get("minimum", 0) == below.get("maximum")]
    found = {key: example_of(properties[key]) for key in properties if key in shown}
    for rule in schema.get("allOf", ()):
        if all(found.get(key) == test["const"] for key, test in rule["if"]["properties"].items()):
            needed = [key for key in rule["then"].get("required", ()) if key not in found]
            found |= {key: example_of(properties[key]) for key in needed}
    return found
