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

from app.domain.load import demand
from app.domain.load.against import supply_fuses
from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacks
from app.domain.remarks._sight import VOLTS, Sight

KIND = RemarkKind(code="little-left-for-more", rank="knowing", group="network")

SEVEN_KW_A = Decimal(7000) / VOLTS


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each main fuse with less to spare than a charger takes."""
    for fuse in supply_fuses(sight.net, sight.loads):
        if fuse.thing is None or not sight.record.circuits:
            continue
        if fuse.sign == "open" and fuse.rated is None:
            yield lacks(fuse.thing.ref, "the rating")
        elif fuse.sign == "within" and fuse.rated is not None:
            spare = fuse.rated.value - demand(sight.net, sight.loads).amps
            if spare < SEVEN_KW_A:
                yield Found(
                    (fuse.thing.ref,),
                    fuse.says,
                    (figure("To spare on paper", spare, "A", calculated=True),),
                )
