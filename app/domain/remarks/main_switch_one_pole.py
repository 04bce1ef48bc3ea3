"""A main switch breaks one pole only.

Looks at:
    The poles of each main switch.
Why it matters:
    The neutral stays joined with everything off, and a neutral can be live.
What to do:
    Ask an electrician about a two-pole switch. Until then take it that the switch does
    not part the home from the supply.
Source:
    BS 7671:2018+A2:2022, 462.1.201 and 537 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="main-switch-one-pole", rank="electrician", group="board")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each main switch that leaves the neutral joined."""
    for device in sight.record.devices:
        if device.kind != "main_switch":
            continue
        if device.poles in ("line", "three_line"):
            yield Found(
                (device.ref, device.board),
                f"{sight.name(device.ref)} breaks the line only.",
            )
        if device.poles == "unknown":
            yield lacks(device.ref, "which poles it breaks")
