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

from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacks
from app.domain.remarks._sight import Sight
from app.domain.remarks._supply import by_fuse

KIND = RemarkKind(code="demand-above-main-fuse", rank="knowing", group="network")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each main fuse that the sum exceeds, and those that cannot be judged."""
    for ref, fuses in by_fuse(sight).items():
        beyond = [fuse for fuse in fuses if fuse.sign == "beyond"]
        rated = next((fuse.rated for fuse in fuses if fuse.rated), None)
        if rated is None:
            yield lacks(ref, "the rating")
        elif beyond:
            says = " ".join(dict.fromkeys(fuse.says for fuse in beyond))
            yield Found((ref,), says, (figure("Main fuse", rated.value, "A"),))
        elif any(fuse.sign == "open" for fuse in fuses):
            yield lacks(ref, "the load of every circuit behind it")
