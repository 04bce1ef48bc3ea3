"""The tails are small for the main fuse.

Looks at:
    The printed size of your tails, and the rating of the cut-out before them.
Why it matters:
    Only the network's fuse protects the tails, so it must be no larger than they carry.
What to do:
    Ask an electrician, who may have to ask the network. Leave the tails alone.
Source:
    BS 7671:2018+A2:2022, table 4D1A, method C: 16 mm² carries 87 A and is used up to
    80 A, 25 mm² carries 114 A and is used up to 100 A (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.chain import Step
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

KIND = RemarkKind(code="tails-small-for-fuse", rank="electrician", group="board")

# Largest cut-out fuse in use on tails of a size, [A] by [mm²]: from memory.
USUAL = {Decimal(10): Decimal(60), Decimal(16): Decimal(80), Decimal(25): Decimal(100)}


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each set of tails behind a fuse larger than is usual for its size."""
    for tails in sight.intake_of("tails"):
        fuse = sight.overcurrent(tails.ref)
        if tails.owner not in ("consumer", "unknown") or fuse is None:
            continue
        if not fuse.rated_current_a:
            need = Need(ref=fuse.ref, what="the rating")
            yield CannotTell((tails.ref, fuse.ref), (need,))
        elif not tails.csa_mm2:
            yield lacks(tails.ref, "the printed size")
        elif fuse.rated_current_a > _most(tails.csa_mm2):
            yield _small(sight, tails, fuse)


def _most(csa: Decimal) -> Decimal:
    """Return the largest fuse for a size; above the table nothing is said."""
    fits = [most for size, most in USUAL.items() if size <= csa]
    return Decimal(1000) if csa > max(USUAL) else max(fits, default=Decimal(0))


def _small(sight: Sight, tails: IntakeItem, fuse: Step) -> Found:
    figures = (
        figure("Size of the tails", tails.csa_mm2 or 0, "mm²"),
        figure("Fuse before them", fuse.rated_current_a or 0, "A"),
        figure(
            "Usual largest fuse for this size", _most(tails.csa_mm2 or Decimal(0)), "A"
        ),
    )
    return Found(
        (tails.ref, fuse.ref),
        f"{sight.name(tails.ref)} are {tails.csa_mm2} mm² behind a fuse of "
        f"{fuse.rated_current_a} A.",
        figures,
    )
