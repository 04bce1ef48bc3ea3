"""A lighting circuit has no protective conductor.

Looks at:
    Lighting circuits, and whether their cable has a protective conductor.
Why it matters:
    A metal switch plate or light on it becomes live in a fault, and nothing opens.
What to do:
    Use only plastic switches and double-insulated lights on it, and put a note at the
    board. Ask an electrician about new cable. The old cover may crumble: do not disturb
    it.
Source:
    BS 7671:2018+A2:2022, 411.3.1.1 (from memory).
Not retrospective:
    Lighting was wired without one until about 1966 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight, counted, refs_of

KIND = RemarkKind(code="lights-without-earth", rank="electrician", group="circuits")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each lighting circuit without a protective conductor."""
    for circuit in sight.record.circuits:
        if circuit.use != "lighting":
            continue
        points = refs_of(sight.points_on(circuit))
        if circuit.has_cpc == "no":
            yield Found(
                (circuit.ref, *points),
                f"{sight.name(circuit.ref)} has none, and feeds "
                f"{counted(len(points), 'point')}.",
            )
        elif circuit.has_cpc == "unknown" and not circuit.cpc_mm2:
            yield lacks(circuit.ref, "whether its cable has a protective conductor")
