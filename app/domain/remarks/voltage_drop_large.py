"""Much voltage is lost on the way.

Looks at:
    The length, size and load of each circuit and of the cables to its board, with the
    load taken as spread along the circuit.
Why it matters:
    Lights dim, motors start badly, and the same length keeps a fault current small, so
    that a fuse opens late.
What to do:
    Ask for readings of voltage and loop impedance at the far end before anything is
    added there.
Source:
    BS 7671:2018+A2:2022, 525.202 and appendix 4: 3 % for lighting, 5 % for the rest.
Not retrospective:
    The limits changed in 2008.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Circuit
from app.domain.remarks._figures import by_part, found_beyond
from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="voltage-drop-large", rank="electrician", group="circuits")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the circuits beyond the limit; what hangs on one is named with it."""
    beyond, unknown = {}, []
    for circuit in sight.record.circuits:
        part = sight.figures(circuit).part("drop-spread")
        if part is not None and part.sign == "beyond":
            beyond[circuit.ref] = circuit
        elif part is not None and part.sign == "open" and circuit.use != "unknown":
            unknown.append(circuit)
    for ref, circuit in beyond.items():
        above = {step.ref for step in sight.before(ref)}
        if not above & set(beyond):
            behind = tuple(other for other in beyond if other in sight.below(ref))
            yield _found(sight, circuit, behind)
    for circuit in unknown:
        yield from by_part(sight, circuit, "drop-spread")


def _found(sight: Sight, circuit: Circuit, behind: tuple[str, ...]) -> Found:
    part = sight.figures(circuit).part("drop-spread")
    assert part is not None  # noqa: S101 - it was there when it was looked at
    found = found_beyond(sight, circuit, part)
    supply = [s.ref for s in sight.before(circuit.ref) if s.sort == "circuit"]
    more = f" More still on {sight.names(behind)}." if behind else ""
    return Found(
        (*found.about, *supply, *behind), f"{found.sentence}{more}", found.figures
    )
