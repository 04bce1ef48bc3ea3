"""A board says nothing of the home's second supply.

Looks at:
    Whether a notice stands at each board, where something else than the network can
    feed the home.
Why it matters:
    Who opens a switch there, or the fire service, takes the home to be off.
What to do:
    Fix a durable notice at the intake, at each board and at the isolating switch of
    each source.
Source:
    BS 7671:2018+A2:2022, 514.15.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import CannotTell, Found, Need, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="second-supply-notice", rank="knowing", group="labels")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the boards without a notice, in a home with a second supply."""
    others = [s for s in sight.sources() if s.kind in OWN]
    if not others:
        return
    boards = sight.record.boards
    bare = refs_of(b for b in boards if b.second_supply_notice == "no")
    unseen = refs_of(b for b in boards if b.second_supply_notice == "unknown")
    names = sight.names(refs_of(others))
    if bare:
        yield Found(
            (*bare, *refs_of(others)),
            f"{names} can feed the home, and no notice stands at {sight.names(bare)}.",
        )
    if unseen:
        yield CannotTell(
            (*unseen, *refs_of(others)),
            tuple(Need(ref=r, what="whether such a notice is there") for r in unseen),
        )


OWN = ("solar", "battery", "generator", "vehicle")
