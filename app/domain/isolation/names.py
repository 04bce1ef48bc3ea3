"""Things by name, as the sentences of a plan say them."""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.answers import Named
from app.domain.conditions import seen_as
from app.domain.record import Item

MOST_NAMED = 8


def called(item: Item | Named) -> str:
    """Return what a thing is called with its reference, which stands in it once."""
    words = {word.strip("“”,.;:()") for word in item.title.split()}
    return item.title if item.ref in words else f"{item.title} ({item.ref})"


def named(items: Iterable[Item]) -> str:
    """Return things by name and reference, in one phrase."""
    return listed(called(item) for item in items)


def listed(words: Iterable[str], most: int = MOST_NAMED) -> str:
    """Return words joined as in a sentence; of many, the first and how many more."""
    found = list(dict.fromkeys(words))
    if len(found) > most:
        found = [*found[:most], f"{len(found) - most} more"]
    if len(found) < 2:
        return "".join(found)
    return f"{', '.join(found[:-1])} and {found[-1]}"


def wrong_with(items: Iterable[Item]) -> str:
    """Return that something is wrong with things, and what, in one sentence."""
    found = listed(f"{called(item)}: {seen_as(item)}" for item in items)
    return f"By the record something is wrong. {found}."
