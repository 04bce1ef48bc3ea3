"""A rewirable fuse holds wire that is too thick for its carrier.

Looks at:
    The rating on the carrier of each rewirable fuse, and the wire seen in it.
Why it matters:
    The cable behind it overheats before such a fuse gives way.
What to do:
    Leave the carrier alone and call an electrician. Use that circuit as little as you
    can until it is put right.
Source:
    BS 3036 and BS 7671:2018+A2:2022, 533.1.1.3 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacking
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="fuse-wire-too-thick", rank="call", group="call")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each fuse whose wire is rated above its carrier."""
    unseen = []
    for fuse in sight.record.devices:
        if fuse.kind != "fuse_rewirable":
            continue
        wire, rated = fuse.fuse_wire_a, fuse.rated_current_a
        if not wire or not rated:
            unseen.append(fuse.ref)
        elif wire > rated:
            yield Found(
                (fuse.ref, fuse.board),
                f"{sight.name(fuse.ref)}: wire for {wire} A was seen in a carrier for "
                f"{rated} A.",
                (figure("Wire seen", wire, "A"), figure("Carrier", rated, "A")),
            )
    if unseen:
        yield lacking(
            tuple(unseen),
            "the rating of the carrier, and the wire in it as an electrician reads it",
        )
