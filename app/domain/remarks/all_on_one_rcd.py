"""Everything hangs on one RCD.

Looks at:
    Whether one and the same RCD stands before every circuit of a home with three
    circuits or more.
Why it matters:
    One fault takes the whole home off, the light on the stairs with it.
What to do:
    Keep a torch where you can find it in the dark. Ask an electrician about splitting
    the circuits when the board is next worked on.
Source:
    BS 7671:2018+A2:2022, 314.1 and 531.3.2 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.network import feeders_of
from app.domain.remarks._kind import CannotTell, Found, Need, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, is_supply, refs_of

KIND = RemarkKind(code="all-on-one-rcd", rank="knowing", group="rcd")

FEW = 3


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the RCD that every circuit hangs on."""
    circuits = [c for c in sight.record.circuits if not is_supply(c)]
    loose = refs_of(c for c in circuits if not feeders_of(sight.net, c.ref))
    for rcd in sight.record.devices:
        below = sight.circuits_below(rcd.ref) if rcd.kind == "rcd" else ()
        if len(below) < FEW or len(below) + len(loose) < len(circuits):
            continue
        if loose:
            yield CannotTell(
                (rcd.ref, *loose),
                tuple(Need(ref=ref, what="the way it starts from") for ref in loose),
            )
        else:
            yield Found(
                (rcd.ref, *refs_of(below)),
                f"All {len(below)} circuits hang on {sight.name(rcd.ref)}.",
            )
