"""Nearly all socket-outlets of the home are on one circuit.

Looks at:
    Homes with sockets on two storeys or more, and the circuits that they are on;
    kitchens and outbuildings left out.
Why it matters:
    One fault takes all of them; and the load of a whole home is on one cable.
What to do:
    Know it. Spread heaters over other circuits. Ask an electrician when the home is
    next altered.
Source:
    BS 7671:2018+A2:2022, 314.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import SOCKETS, Sight, refs_of

KIND = RemarkKind(
    code="sockets-of-home-on-one-circuit", rank="knowing", group="circuits"
)

STOREYS = ("ground", "first", "second", "third")
APART = ("kitchen", "utility", "outbuilding", "garage")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the one circuit that serves the sockets of several storeys."""
    here = [(p, r) for p in sight.record.points if (r := sight.room(p))]
    sockets = [
        (p, r) for p, r in here
        if p.kind in SOCKETS and r.storey in STOREYS and r.kind not in APART
    ]  # fmt: skip
    circuits = {c.ref for p, _ in sockets for c in sight.circuits_at.get(p.ref, ())}
    loose = refs_of(p for p, _ in sockets if p.ref not in sight.circuits_at)
    if len({room.storey for _, room in sockets}) < 2 or len(circuits) != 1:
        return
    (circuit,) = circuits
    if loose:
        yield lacking(loose, "the circuit that feeds it")
    else:
        yield Found(
            (circuit, *refs_of(p for p, _ in sockets)),
            f"{sight.name(circuit)} feeds all {len(sockets)} sockets outside the "
            "kitchen, on several storeys.",
        )
