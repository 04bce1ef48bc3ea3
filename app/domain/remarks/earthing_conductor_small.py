"""The earthing conductor is small.

Looks at:
    The printed size of the earthing conductor and of the tails, where the network
    gives the earth.
Why it matters:
    In a fault it carries the fault current until a fuse opens, and must not overheat.
What to do:
    Ask an electrician, who can also work it out from the fault current.
Source:
    BS 7671:2018+A2:2022, table 54.7: as large as the line up to 16 mm², and 16 mm² for
    a line up to 35 mm². A smaller one may be right by calculation, 543.1.3.
Not retrospective:
    What was right for the rules of its day may stay, if it is sound.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.record import IntakeItem
from app.domain.remarks._kind import (
    CannotTell,
    Found,
    Need,
    Outcome,
    RemarkKind,
    figure,
    lacks,
)
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="earthing-conductor-small", rank="electrician", group="earthing")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each earthing conductor that the table would have larger."""
    earthing = sight.record.home.earthing
    if earthing == "tt":
        return
    tails = [t for t in sight.intake_of("tails") if t.csa_mm2]
    for conductor in sight.intake_of("earthing_conductor"):
        if earthing == "unknown":
            yield lacks(sight.home, "the earthing arrangement")
            return
        if not conductor.csa_mm2:
            yield lacks(conductor.ref, "the printed size")
        elif not tails:
            yield CannotTell((conductor.ref,), (_size_of_tails(sight),))
        else:
            yield from _small(
                sight, conductor, max(t.csa_mm2 or Decimal(0) for t in tails)
            )


def _size_of_tails(sight: Sight) -> Need:
    tails = sight.intake_of("tails")
    ref = tails[-1].ref if tails else sight.home
    return Need(ref=ref, what="the printed size of the tails")


def _small(sight: Sight, conductor: IntakeItem, line: Decimal) -> Iterator[Found]:
    wanted, size = least_protective(line), conductor.csa_mm2 or Decimal(0)
    if size < wanted:
        yield Found(
            (conductor.ref,),
            f"{sight.name(conductor.ref)} is {size} mm² beside tails of {line} mm².",
            (
                figure("Size", size, "mm²"),
                figure("Size of the tails", line, "mm²"),
                figure("By the table", wanted, "mm²"),
            ),
        )


def least_protective(line: Decimal) -> Decimal:
    """Return the size that table 54.7 selects for a line conductor, [mm²]."""
    if line <= 16:
        return line
    return Decimal(16) if line <= 35 else line / 2
