"""Nothing after the meter switches all of the supply off for work on a board.

Looks at:
    Whether an isolator or a switch-fuse of yours stands between the meter and the
    boards.
Why it matters:
    Without one, whoever changes a board has to have the supply taken off at the
    intake, which is not theirs nor yours to do.
What to do:
    Suppliers fit one on request, often when they change the meter. Ask.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Board
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking, lacks
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="no-isolator-after-meter", rank="knowing", group="network")

ISOLATING = ("isolator", "switch_fuse")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the meters with no isolator between them and any board."""
    for meter in sight.intake_of("meter"):
        below = sight.below(meter.ref)
        unsaid = [i for i in sight.intake_of("unknown", "other") if i.ref in below]
        boards = [b for b in sight.first_boards() if _hangs_on(sight, b, below)]
        if not boards or any(i.ref in below for i in sight.intake_of(*ISOLATING)):
            continue
        if unsaid:
            yield lacking(refs_of(unsaid), "what kind of thing it is")
        else:
            yield Found(
                (meter.ref, *refs_of(boards)),
                f"No isolator is recorded between {sight.name(meter.ref)} and "
                f"{sight.names(refs_of(boards))}.",
            )
    if not sight.intake_of("meter"):
        yield lacks(sight.home, "the meter, and what stands after it")


def _hangs_on(sight: Sight, board: Board, below: frozenset[str]) -> bool:
    return any(device.ref in below for device in sight.heads(board))
