"""Check a value against a JSON Schema, as far as this project's schemas go.

A word of a schema that is not known here is an error, so that nothing goes unchecked.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from decimal import Decimal
from typing import Any

TYPES: dict[str, Callable[[Any], bool]] = {
    "any": lambda _value: True,
    "object": lambda value: isinstance(value, dict),
    "array": lambda value: isinstance(value, list),
    "string": lambda value: isinstance(value, str),
    "boolean": lambda value: isinstance(value, bool),
    "null": lambda value: value is None,
    "integer": lambda value: isinstance(value, int) and not isinstance(value, bool),
    "number": lambda value: (
        isinstance(value, int | float) and not isinstance(value, bool)
    ),
}
SAID_ONLY = {
    "$defs",
    "$schema",
    "additionalProperties",
    "default",
    "description",
    "items",
    "prefixItems",
    "properties",
    "title",
    "unit",
}


def errors(value: Any, schema: dict[str, Any]) -> list[str]:
    """Return where a value is not as its schema says."""
    return _errors(value, schema, schema.get("$defs", {}), "$")


def _errors(value: Any, schema: Any, defs: dict[str, Any], at: str) -> list[str]:
    if "$ref" in schema:
        return _errors(value, defs[schema["$ref"].rpartition("/")[2]], defs, at)
    found = []
    for word, want in schema.items():
        if word in SAID_ONLY:
            continue
        if not _as_said(value, word, want, defs):
            found.append(f"{at}: {word} {str(want)[:60]}, not {str(value)[:60]}")
    return found + _inside(value, schema, defs, at)


def _inside(value: Any, schema: Any, defs: dict[str, Any], at: str) -> list[str]:
    found: list[str] = []
    if isinstance(value, dict):
        known, other = schema.get("properties", {}), schema.get("additionalProperties")
        for name, part in value.items():
            inner = known.get(name, other)
            if isinstance(inner, dict):
                found += _errors(part, inner, defs, f"{at}.{name}")
            elif inner is False:
                found.append(f"{at}.{name}: not in the schema")
    if isinstance(value, list):
        first = schema.get("prefixItems", [])
        for index, part in enumerate(value):
            inner = first[index] if index < len(first) else schema.get("items", {})
            found += _errors(part, inner, defs, f"{at}[{index}]")
    return found


def _as_said(value: Any, word: str, want: Any, defs: dict[str, Any]) -> bool:
    sort, check = CHECKS[word]
    if word == "anyOf":
        return any(not _errors(value, one, defs, "") for one in want)
    return not TYPES[sort](value) or check(value, want)


def _is_date(value: Any, want: Any) -> bool:
    shape = re.fullmatch(r"\d{4}-\d\d-\d\d", value)
    return want == "date" and shape is not None


# Each word: of what sort of value it speaks, and what it says.
CHECKS: dict[str, tuple[str, Callable[[Any, Any], bool]]] = {
    "type": ("any", lambda value, want: TYPES[want](value)),
    "const": ("any", lambda value, want: value == want),
    "enum": ("any", lambda value, want: value in want),
    "anyOf": ("any", lambda _value, _want: False),
    "required": ("object", lambda value, want: all(name in value for name in want)),
    "minimum": ("number", lambda value, want: value >= want),
    "maximum": ("number", lambda value, want: value <= want),
    "minItems": ("array", lambda value, want: len(value) >= want),
    "maxItems": ("array", lambda value, want: len(value) <= want),
    "maxLength": ("string", lambda value, want: len(value) <= want),
    "pattern": ("string", lambda value, want: re.search(want, value) is not None),
    "multipleOf": (
        "number",
        lambda value, want: Decimal(str(value)) % Decimal(str(want)) == 0,
    ),
    "format": ("string", _is_date),
}
