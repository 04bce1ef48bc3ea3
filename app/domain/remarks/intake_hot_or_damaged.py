"""Something at the intake is hot, broken, wet or leaking.

Looks at:
    What is seen of the condition of each item between the street and the boards; the
    earthing has a remark of its own.
Why it matters:
    Heat, water or bare metal here is ahead of every switch that you have.
What to do:
    Keep away and keep others away; touch, spray and open nothing. In Great Britain
    ring 105, free at any hour; in Northern Ireland ring the network's own number, which
    is on the bill. Fire or smoke: get out and ring 999.
Source:
    Common practice, no source; 105 as the networks of Great Britain publish it.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record.choices import CONDITIONS
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import EARTHING, Sight, refs_of

KIND = RemarkKind(code="intake-hot-or-damaged", rank="call", group="call")

BAD = ("hot", "damaged", "wet", "leaking")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each item of the intake that nobody should go near."""
    items = [item for item in sight.record.intake if item.kind not in EARTHING]
    for item in items:
        if item.condition in BAD:
            seen = CONDITIONS[item.condition].lower()
            yield Found((item.ref,), f"{sight.name(item.ref)} was seen: {seen}.")
    unseen = refs_of(item for item in items if item.condition == "unknown")
    if unseen:
        yield lacking(unseen, "a look at the condition, from where you stand")
