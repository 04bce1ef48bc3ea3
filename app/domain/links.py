"""What no record kept may hold: references used twice, leading nowhere, in circles.

A record in the file or in a document is free of these; one that is only being looked
at need not be, and `faults` reports them.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.circles import circles
from app.domain.fault import links_of
from app.domain.network import network
from app.domain.record import SORTS, Record
from app.errors import Problem


def broken_links(record: Record) -> tuple[Problem, ...]:
    """Return each reference that cannot be kept, with its place and the reason."""
    return (
        *_used_twice(record),
        *_leading_nowhere(record),
        *_in_circles(record),
    )


def places(record: Record) -> Iterator[tuple[str, str]]:
    """Yield each item's place, such as ``devices[3]``, with its reference."""
    for cls in SORTS.values():
        for index, item in enumerate(record.of(cls)):
            yield f"{cls.plural}[{index}]", item.ref


def _used_twice(record: Record) -> Iterator[Problem]:
    seen: dict[str, str] = {}
    for place, ref in places(record):
        if ref in seen:
            reason = f"The reference {ref} is already used at {seen[ref]}."
            yield Problem(f"{place}.ref", reason)
        seen.setdefault(ref, place)


def _leading_nowhere(record: Record) -> Iterator[Problem]:
    where = {ref: place for place, ref in places(record)}
    for item in record.items():
        for name, ref, sorts in links_of(item):
            target = record.by_ref.get(ref)
            place = f"{where[item.ref]}.{name}"
            if target is None:
                yield Problem(place, f"There is no {ref} in this home.")
            elif target.sort not in sorts:
                wanted = " or ".join(SORTS[sort].noun.lower() for sort in sorts)
                noun = target.noun.lower()
                yield Problem(place, f"{ref} is a {noun}; it must be a {wanted}.")


def _in_circles(record: Record) -> Iterator[Problem]:
    where = {ref: place for place, ref in places(record)}
    for circle in circles(network(record)):
        reason = f"That would make these feed each other: {', '.join(circle)}."
        yield Problem(where[circle[0]], reason)
