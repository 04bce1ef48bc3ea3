"""Figures as plain text for a terminal: each with its working and what it assumes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from app.domain.circuits import CAME, CircuitAnswer, Figure, Part, Working
from app.domain.load import LoadAnswer, PhaseDemand, Said, WhatIf, amps
from app.domain.load.demand import Demand
from app.domain.tables import AMENDMENT

CAUTION = (
    "Calculated from your record, which nobody has tested. Before any work, prove it "
    "at the point, on the day."
)
SIGNS = {"within": "within", "beyond": "BEYOND", "open": "open", None: ""}


def circuit_text(answer: CircuitAnswer) -> str:
    """Return the figures of a circuit as text."""
    lines = [f"{answer.circuit.title} ({answer.circuit.ref})", ""]
    for part in answer.parts:
        lines += _part(part)
    return "\n".join((*lines, AMENDMENT, CAUTION))


def load_text(answer: LoadAnswer) -> str:
    """Return the load of a home as text."""
    lines = [*_by_phase(answer.demand, answer.phases), "", "What carries it"]
    for each in answer.against:
        name = each.thing.title if each.thing else "Supply fuse"
        lines += [f"  {name}: {each.says}", *_assumed(_of(each.rated))]
    if answer.rcds:
        lines += ["", "RCDs", *(f"  {r.rcd.title}: {r.says}" for r in answer.rcds)]
    for asked in answer.rcds_differ:
        lines += ["", asked.question, f"  {asked.answer}"]
        lines += [*_said(asked.why), *_said(asked.matters)]
    if answer.what_if:
        lines += ["", *_what_if(answer.what_if)]
    return "\n".join((*lines, "", AMENDMENT, CAUTION))


def _part(part: Part) -> Iterator[str]:
    sign = SIGNS[part.sign]
    yield f"{part.title}{': ' + sign if sign else ''}"
    yield f"  {part.says}"
    for working in part.workings:
        yield from _working(working)
    yield from _assumed(part.assumes)
    yield ""


def _working(working: Working) -> Iterator[str]:
    yield f"  {working.label} = {working.shown}"
    yield f"    {working.formula}"
    yield f"    {working.put_in}"
    for figure in working.figures:
        basis = f"; {figure.basis}" if figure.basis else ""
        came = f"{CAME[figure.came]}: {figure.source}{basis}"
        yield f"    {figure.label}: {figure.shown} ({came})"
    yield f"    Rounded {working.rounding}. {working.source}."


def _by_phase(found: Demand, phases: Sequence[PhaseDemand]) -> Iterator[str]:
    """Of a three-phase home each phase by itself: a sum of them flows nowhere."""
    if not phases:
        yield from _demand(found)
    for each in phases:
        yield from _demand(each.demand, each.phase or "No one phase recorded")


def _demand(found: Demand, of: str = "") -> Iterator[str]:
    name = f"{of}: on paper" if of else "On paper"
    yield f"{name}, cautious: {found.total} with diversity"
    for row in found.rows:
        basis = f"; {row.basis}" if row.basis else ""
        yield f"  {row.shown:>8}  {row.label}: {row.rule}"
        yield f"            {row.put_in} ({row.source}{basis})"
    for other in found.variations:
        yield f"  Counted otherwise, {other.label}: {other.shown}"
    if found.variations:
        yield f"  So between {amps(found.low)} and {amps(found.high)}"
    if found.off_peak:
        yield f"  Without the off-peak loads {found.day}; these alone {found.off_peak}"
    for left in found.not_counted:
        how = "Not counted in full" if left.partly else "Not counted"
        yield f"  {how}: {left.title} ({left.ref}). {left.why}"
    yield from _assumed(found.assumes)


def _what_if(found: WhatIf) -> Iterator[str]:
    yield f"With {', '.join(each.title for each in found.additions)}"
    yield from _by_phase(found.then, found.phases)
    for each in found.against:
        yield f"  {each.says}"
    yield "What to do first"
    yield from _said(found.to_do)


def _said(lines: Iterable[Said]) -> Iterator[str]:
    for said in lines:
        yield f"  {said.text}{f' ({said.source})' if said.source else ''}"


def _assumed(sentences: Iterable[str]) -> Iterator[str]:
    for sentence in sentences:
        yield f"  Assumed: {sentence}"


def _of(figure: Figure | None) -> tuple[str, ...]:
    return figure.assumes if figure else ()
