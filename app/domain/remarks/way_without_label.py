"""A way in use has no label.

Looks at:
    The words found at each way that feeds something.
Why it matters:
    Whoever has to switch it off in a hurry has to guess.
What to do:
    Find out what it feeds and write it there, with the way's number. Do not cover what
    the maker printed.
Source:
    BS 7671:2018+A2:2022, 514.8.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.kinds import DEVICE_KINDS
from app.domain.record import Device
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="way-without-label", rank="record", group="labels")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the ways of each board at which nothing is written."""
    for board in sight.record.boards:
        ways = [d for d in sight.record.devices_of(board.ref) if _is_way(sight, d)]
        bare = refs_of(w for w in ways if (w.label_found or "").strip(" -") == "")
        unread = refs_of(w for w in ways if w.label_found is None)
        bare = tuple(ref for ref in bare if ref not in unread)
        if bare:
            yield Found(
                (board.ref, *bare), f"Nothing is written at {sight.names(bare)}."
            )
        if unread:
            yield lacking(unread, "the words that stand there")


def _is_way(sight: Sight, device: Device) -> bool:
    outgoing = DEVICE_KINDS[device.kind].outgoing
    return outgoing and device.in_use != "spare" and device.ref in sight.net.fed
