"""Remarks that rest on the arithmetic of a circuit."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.circuits import Part
from app.domain.circuits.part import ASK
from app.domain.record import Circuit
from app.domain.remarks._kind import CannotTell, Found, Need, Outcome, figure
from app.domain.remarks._sight import Sight, refs_of

# How the arithmetic begins what it says of a usual Ze that stands in.
GUESSED = "Ze is not recorded"


def by_part(
    sight: Sight, circuit: Circuit, code: str, *, sure: bool = False
) -> Iterator[Outcome]:
    """Yield what one question of arithmetic says of a circuit, where it is beyond.

    With ``sure`` a result that leans on a Ze that nobody gave is not told.
    """
    part = sight.figures(circuit).part(code)
    if part is None or part.sign in (None, "within"):
        return
    if part.sign == "open":
        yield _open(circuit, part)
    elif sure and any(text.startswith(GUESSED) for text in part.assumes):
        need = Need(ref=sight.home, what="Ze, measured or as the network says")
        yield CannotTell((circuit.ref, sight.home), (need,))
    else:
        yield found_beyond(sight, circuit, part)


def found_beyond(sight: Sight, circuit: Circuit, part: Part) -> Found:
    """Return the remark on a result beyond its limit, with what it assumes."""
    figures = tuple(
        figure(w.label, w.value, w.unit, calculated=True) for w in part.workings
    )
    assumes = f" Assumed: {' '.join(part.assumes)}" if part.assumes else ""
    says = part.says.removesuffix(" Part of that is assumed.").removesuffix(f" {ASK}")
    worked = part.found
    if worked.outcome == "figure" and not says.startswith(worked.shown):
        says = f"{worked.shown}. {says}"
    guard = sight.guard(circuit)
    ways = refs_of((*sight.ways(circuit), *((guard.item,) if guard else ())))
    return Found(
        tuple(dict.fromkeys((circuit.ref, *ways))),
        f"{sight.name(circuit.ref)}: {says}{assumes}",
        figures,
    )


def _open(circuit: Circuit, part: Part) -> CannotTell:
    both = (part.found, part.limit)
    needs = tuple(
        Need(ref=need.ref, what=need.label)
        for outcome in both
        if outcome is not None and outcome.outcome == "cannot_tell"
        for need in outcome.needs
    )
    if needs:
        about = (circuit.ref, *(need.ref for need in needs))
        return CannotTell(tuple(dict.fromkeys(about)), needs)
    why = part.says.partition("Cannot tell: ")[2].removesuffix(".")
    need = Need(ref=circuit.ref, what="more than the record can hold")
    return CannotTell((circuit.ref,), (need,), f"{why} ({circuit.title})")
