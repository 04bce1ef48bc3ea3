"""There is no surge protection.

Looks at:
    Whether each board next to the intake has surge protection.
Why it matters:
    A surge from the network or a storm harms what is plugged in and what is wired in,
    alarms and chargers included.
What to do:
    Ask about it when the board is next worked on. Where only money is at stake, the
    owner may decline it.
Source:
    BS 7671:2018+A2:2022, 443.4.1 (one source seen).
Not retrospective:
    Asked of new work by that edition; older work need not have it.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="no-surge-protection", rank="knowing", group="board")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each board at the intake that has none."""
    unseen = []
    for board in sight.first_boards():
        devices = sight.record.devices_of(board.ref)
        if any(device.kind == "surge_protector" for device in devices):
            continue
        if board.surge_protection == "no":
            yield Found((board.ref,), f"{sight.name(board.ref)} has none.")
        if board.surge_protection == "unknown":
            unseen.append(board.ref)
    if unseen:
        yield lacking(tuple(unseen), "whether there is surge protection")
