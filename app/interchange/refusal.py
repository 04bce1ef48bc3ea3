"""How a document is refused: whole, with where and why."""

from __future__ import annotations

from typing import Any, NoReturn

from app.errors import InvalidError, Problem

MOST_PROBLEMS = 100


def refuse(problems: list[Problem]) -> NoReturn:
    """Refuse a document.

    Raises:
        InvalidError: Always, with the first of the problems.
    """
    raise InvalidError(
        "The document cannot be taken; nothing was changed.",
        tuple(problems[:MOST_PROBLEMS]),
    )


def problem_of(error: Any, within: str = "") -> Problem:
    """Return what the record's classes found wrong as a place and a reason."""
    parts = [f"[{p}]" if isinstance(p, int) else f".{p}" for p in error["loc"]]
    place = "".join((within, *parts)).lstrip(".")
    reason = error["msg"].removeprefix("Value error, ")
    return Problem(place or "the document", f"{reason}.")
