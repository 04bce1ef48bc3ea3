"""Remarks as text for a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from textwrap import fill

from app.domain.remarks import GROUPS, RANKS, Remark, Unit

WIDTH = 78


def remarks_text(found: Iterable[Remark]) -> str:
    """Return remarks by what one action settles, and what cannot be told after."""
    every = tuple(found)
    told = [r for r in every if r.outcome == "remark" and r.aside != "set"]
    lines = list(_grouped(told)) or ["Nothing to remark on so far."]
    codes = dict.fromkeys(r.code for r in every if r.outcome == "cannot_tell")
    if codes:
        lines += ["", _wrapped(f"Cannot be told yet: {', '.join(codes)}.")]
    aside = dict.fromkeys(r.code for r in every if r.aside == "set")
    if aside:
        lines += ["", _wrapped(f"Set aside: {', '.join(aside)}.")]
    return "\n".join((*lines, "", "ways help CODE says more of one."))


def unit_text(unit: Unit) -> str:
    """Return the text of one remark: what it looks at, why, what to do, its source."""
    rank = RANKS[unit.kind.rank]
    lines = [unit.title, f"{rank}. {GROUPS[unit.kind.group]}.", ""]
    for heading, text in unit.sections.items():
        lines += [heading, _wrapped(text, "  "), ""]
    return "\n".join(lines).rstrip()


def _grouped(found: Iterable[Remark]) -> Iterator[str]:
    groups: dict[str, list[Remark]] = {}
    for remark in found:
        groups.setdefault(remark.group, []).append(remark)
    for number, (group, remarks) in enumerate(groups.items()):
        yield from ([""] if number else [])
        yield GROUPS[group]
        for remark in remarks:
            rank = RANKS[remark.rank].lower()  # type: ignore[index]
            yield _wrapped(f"{remark.code} ({rank}): {remark.sentence}", "  ", "    ")


def _wrapped(text: str, first: str = "", rest: str | None = None) -> str:
    after = first if rest is None else rest
    return fill(text, WIDTH, initial_indent=first, subsequent_indent=after)
