"""Two RCDs follow each other without a delay between them.

Looks at:
    Circuits with two RCDs before them.
Why it matters:
    Either may open, or both, so the fault is looked for in the wrong place and more
    goes off than must. The protection itself is no worse.
What to do:
    Know it when something has tripped: look at both. Ask an electrician when the board
    is next worked on.
Source:
    BS 7671:2018+A2:2022, 536.4.1.4 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import CannotTell, Found, Need, Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="rcds-in-series", rank="knowing", group="rcd")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each pair of RCDs of which the first does not wait, by the second."""
    for rcd in sight.record.devices:
        if not rcd.residual_current_ma:
            continue
        for step in sight.rcds(rcd.ref)[:1]:
            if step.time_delayed == "unknown":
                yield CannotTell(
                    (rcd.ref, step.ref),
                    (Need(ref=step.ref, what="whether it is time-delayed, S"),),
                )
            elif step.time_delayed != "yes":
                yield Found(
                    (rcd.ref, step.ref),
                    f"{sight.name(step.ref)} stands before {sight.name(rcd.ref)} and "
                    "does not wait for it.",
                )
