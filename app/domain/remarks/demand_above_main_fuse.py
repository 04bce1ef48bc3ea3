"""On paper more may be drawn than the main fuse carries.

Looks at:
    What every circuit draws, with the household allowances, against the rating of the
    main fuse.
Why it matters:
    Most homes come out above their fuse on this sum, which is cautious: not everything
    is on at once. But there is nothing to spare for a charger, a shower or a heat pump.
What to do:
    Have the network asked before anything large is added. The page on load shows the
    sum, and what an addition would do.
Source:
    IET On-Site Guide, tables A1 and A2, household.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.load.against import supply_fuses
from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="demand-above-main-fuse", rank="knowing", group="network")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each main fuse that the sum exceeds, and those without a rating."""
    for fuse in supply_fuses(sight.net, sight.loads):
        if fuse.thing is None or not sight.record.circuits:
            continue
        ref = fuse.thing.ref
        if fuse.sign == "beyond":
            rated = fuse.rated.value if fuse.rated else Decimal(0)
            figures = (figure("Main fuse", rated, "A"),)
            yield Found((ref,), fuse.says, figures)
        elif fuse.sign == "open":
            what = "the rating" if fuse.rated is None else "the load of every circuit"
            yield lacks(ref, what)
