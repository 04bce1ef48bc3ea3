"""The words at a way say nothing of what it feeds.

Looks at:
    Ways in use whose label is only a number.
Why it matters:
    A number helps nobody who does not have the list that went with it.
What to do:
    Find out what each feeds and write it there.
Source:
    BS 7671:2018+A2:2022, 514.8.1 (from memory).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from app.domain.kinds import DEVICE_KINDS
from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(
    code="label-says-nothing",
    rank="record",
    group="labels",
    always_tells="Only words that were read are looked at.",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the ways of each board with a bare number for a label."""
    for board in sight.record.boards:
        ways = refs_of(
            device
            for device in sight.record.devices_of(board.ref)
            if device.ref in sight.net.fed
            and DEVICE_KINDS[device.kind].outgoing
            and re.fullmatch(r"\W*\d+\W*", device.label_found or "")
        )
        if ways:
            yield Found(ways, f"Only a number stands at {sight.names(ways)}.")
