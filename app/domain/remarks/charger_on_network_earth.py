"""A vehicle charger hangs on the network's combined earth and neutral.

Looks at:
    Vehicle chargers, where the home is earthed as TN-C-S.
Why it matters:
    If the network's neutral breaks, the body of a vehicle that stands on wet ground can
    become live, and nothing opens.
What to do:
    Read in the charger's papers whether it opens all poles when that happens. If they
    do not say, ask whoever fitted it.
Source:
    BS 7671:2018+A2:2022, 722.411.4.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import CannotTell, Found, Need, Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="charger-on-network-earth", rank="electrician", group="earthing")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each charger on such an earth."""
    earthing = sight.record.home.earthing
    for point in sight.record.points:
        if point.kind != "vehicle_charger":
            continue
        if earthing == "tn_c_s":
            yield Found((point.ref, sight.home), f"{sight.name(point.ref)}, on TN-C-S.")
        elif earthing == "unknown":
            need = Need(ref=sight.home, what="the earthing arrangement")
            yield CannotTell((point.ref, sight.home), (need,))
