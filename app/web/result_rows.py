"""Test results as rows of a table, wherever they are shown."""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.days import in_words
from app.domain.record import Record, Result
from app.domain.record.choices import POLARITY, WORKED
from app.domain.results.sheet import BY_NAME, shown
from app.web.addresses import item_url

HEADS = ("Of", "Tested", "r1, rn, r2", "R1+R2; R2", "Insulation", "Zs; Ze", "More")
NAMES = {
    "ring": ("r1_ohm", "rn_ohm", "r2_ohm"),
    "own": ("r1_r2_ohm", "r2_alone_ohm"),
    "insulation": ("live_live_mohm", "live_earth_mohm"),
    "loop": ("zs_ohm", "ze_ohm"),
}


def result_rows(
    record: Record, results: Iterable[Result], *, of: bool
) -> tuple[tuple[object, ...], ...]:
    """Return a row for each result: what was tested, or from which paper it is.

    The day that it was tested on leads to the page of that one result.

    Args:
        record: The home.
        results: Its results.
        of: Whether the first cell names what was tested; else the paper.
    """
    return tuple(_row(record, result, of=of) for result in results)


def day_of(result: Result) -> str:
    """Return when it was tested, with its reference, so that no two read alike."""
    day = in_words(result.tested_on) if result.tested_on else "day not known"
    return f"{day} ({result.ref})"


def measured(result: Result) -> str:
    """Return all that was measured, each with its name and unit."""
    columns = (BY_NAME[name] for names in NAMES.values() for name in names)
    found = [
        f"{column.head} {shown(result, column)} {column.unit}"
        for column in columns
        if shown(result, column)
    ]
    return ", ".join([*found, *_rest(result)]) or "No value is written down"


def _row(record: Record, result: Result, *, of: bool) -> tuple[object, ...]:
    ref = result.about if of else result.paper
    item = record.by_ref.get(ref or "")
    first: object = "The supply" if of else "From no paper named"
    if item is not None:
        first = (item.title, item_url(record.home.ref, item))
    return (
        first,
        (day_of(result), item_url(record.home.ref, result)),
        *(_numbers(result, names) for names in NAMES.values()),
        ", ".join(_more(result)) or "–",
    )


def _numbers(result: Result, names: tuple[str, ...]) -> str:
    found = [(shown(result, BY_NAME[name]), BY_NAME[name].unit) for name in names]
    if not any(text for text, _ in found):
        return "–"
    return "; ".join(f"{text} {unit}" if text else "–" for text, unit in found)


def _more(result: Result) -> list[str]:
    return [*_rest(result), result.note] if result.note else _rest(result)


def _rest(result: Result) -> list[str]:
    """Return what has no column of its own in a table."""
    found = []
    if result.polarity != "unknown":
        found.append(f"polarity {POLARITY[result.polarity].lower()}")
    if result.rcd_ms is not None:
        found.append(f"RCD {shown(result, BY_NAME['rcd_ms'])} ms")
    if result.rcd_button != "unknown":
        found.append(f"button: {WORKED[result.rcd_button].lower()}")
    if result.fault_current_ka is not None:
        found.append(f"{shown(result, BY_NAME['fault_current_ka'])} kA")
    return found
