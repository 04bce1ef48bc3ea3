"""Little is left for a charger or a shower.

Looks at:
    What every circuit draws, with the household allowances, against the rating of the
    main fuse, where it is within it.
Why it matters:
    A charger or a shower of 7 kW takes some 30 A more.
What to do:
    Have the network asked before anything large is added. The page on load shows what
    an addition would do.
Source:
    IET On-Site Guide, tables A1 and A2, household; 30 A is 7 kW at 230 V.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacks
from app.domain.remarks._sight import VOLTS, Sight
from app.domain.remarks._supply import by_fuse, spare

KIND = RemarkKind(code="little-left-for-more", rank="knowing", group="network")

SEVEN_KW_A = Decimal(7000) / VOLTS


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each main fuse with less to spare than a charger takes."""
    for ref, fuses in by_fuse(sight).items():
        left = [spare(sight, fuse) for fuse in fuses if fuse.sign == "within"]
        known = [amps for amps in left if amps is not None]
        if all(fuse.rated is None for fuse in fuses):
            yield lacks(ref, "the rating")
        elif len(known) == len(fuses) and min(known) < SEVEN_KW_A:
            says = " ".join(dict.fromkeys(fuse.says for fuse in fuses))
            yield Found(
                (ref,),
                says,
                (figure("To spare on paper", min(known), "A", calculated=True),),
            )
