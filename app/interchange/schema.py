"""JSON Schemas in words that every reader of JSON Schema knows."""

from __future__ import annotations

from typing import Any

DIALECT = "https://json-schema.org/draft/2020-12/schema"
# pydantic writes the bounds of our decimals as they stand in Python.
WORDS = {"ge": "minimum", "le": "maximum"}
# Readers that work out multipleOf in binary fractions would refuse 0.3; the others only
# tell our own forms how to show a field.
LEFT_OUT = {
    "multipleOf",
    "blank",
    "group",
    "term",
    "private",
    "come",
    "after",
    "hinted",
    "nonzero",
}


def published(schema: dict[str, Any]) -> dict[str, Any]:
    """Return a schema of pydantic's as it is given to others."""
    return {"$schema": DIALECT, **_in_known_words(schema)}


def _in_known_words(part: Any) -> Any:
    if isinstance(part, list):
        return [_in_known_words(inner) for inner in part]
    if not isinstance(part, dict):
        return part
    return {
        WORDS.get(word, word): _in_known_words(inner)
        for word, inner in part.items()
        if word not in LEFT_OUT or isinstance(inner, dict)
    }
