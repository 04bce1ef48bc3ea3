"""Several ways of a board carry the same words.

Looks at:
    The words found at the ways of each board.
Why it matters:
    One of them is switched off for the other.
What to do:
    Write what tells them apart: the storey, the side, the one large thing.
Source:
    BS 7671:2018+A2:2022, 514.8.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.kinds import DEVICE_KINDS
from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(
    code="labels-alike",
    rank="record",
    group="labels",
    always_tells="Only words that were read are compared.",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the ways of a board that say the same."""
    for board in sight.record.boards:
        said: dict[str, list[str]] = {}
        for device in sight.record.devices_of(board.ref):
            words = " ".join((device.label_found or "").upper().split()).strip(" -")
            if words and DEVICE_KINDS[device.kind].outgoing:
                said.setdefault(words, []).append(device.ref)
        for words, ways in said.items():
            if len(ways) > 1:
                yield Found(
                    tuple(ways), f"{len(ways)} ways of {board.name} say “{words}”."
                )
