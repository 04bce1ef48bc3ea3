"""All lighting circuits hang on one RCD.

Looks at:
    Whether one RCD stands before every lighting circuit of a home with two or more.
Why it matters:
    A fault on one puts all lights out. It can also be a clue: where a neutral is shared
    between two lighting circuits, both work only behind the same RCD.
What to do:
    Keep a torch at hand. Ask an electrician to look for a shared neutral before the
    circuits are split.
Source:
    Common practice, no source; 314.1 of BS 7671:2018+A2:2022 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.network import feeders_of
from app.domain.remarks._kind import CannotTell, Found, Need, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="all-lights-on-one-rcd", rank="knowing", group="rcd")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the RCD that all lighting circuits hang on."""
    lighting = [c for c in sight.record.circuits if c.use == "lighting"]
    loose = refs_of(c for c in lighting if not feeders_of(sight.net, c.ref))
    for rcd in sight.record.devices:
        below = sight.circuits_below(rcd.ref) if rcd.kind == "rcd" else ()
        lit = [circuit for circuit in below if circuit.use == "lighting"]
        if len(lit) < 2 or len(lit) + len(loose) < len(lighting):
            continue
        if loose:
            needs = tuple(Need(ref=r, what="the way it starts from") for r in loose)
            yield CannotTell((rcd.ref, *loose), needs)
        else:
            yield Found(
                (rcd.ref, *refs_of(lit)),
                f"{sight.names(refs_of(lit))} all hang on {sight.name(rcd.ref)}.",
            )
