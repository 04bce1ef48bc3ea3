"""Known work has no paper.

Looks at:
    Boards and circuits of 2005 or later, and work that an electrician or a builder has
    done, and whether there is a paper for them.
Why it matters:
    A certificate says who answers for the work and what was measured. Buyers, insurers
    and the next electrician ask for it.
What to do:
    Ask whoever did it, or the local authority for its register. If there is none, an
    inspection report says how it stands today.
Source:
    England and Wales: the Building Regulations ask for notice of a new circuit or board
    since 1 January 2005 (from memory). Everywhere: BS 7671:2018+A2:2022, 644.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, year_of

KIND = RemarkKind(code="work-without-paper", rank="record", group="papers")

SINCE = 2005


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield what was done since 2005 and has no certificate."""
    years: dict[str, tuple[int | None, str]] = {
        b.ref: (b.year, b.paper) for b in sight.record.boards
    }
    years |= {c.ref: (year_of(c.installed), c.paper) for c in sight.record.circuits}
    late = {ref: paper for ref, (year, paper) in years.items() if (year or 0) >= SINCE}
    none = tuple(ref for ref, paper in late.items() if paper == "none")
    unknown = tuple(ref for ref, paper in late.items() if paper == "unknown")
    if none:
        yield Found(none, f"No certificate was found for {sight.names(none)}.")
    if unknown:
        yield lacking(unknown, "whether there is a certificate")
    with_paper = {paper.work for paper in sight.record.papers}
    for work in sight.record.works:
        hired = work.done_by in ("electrician", "registered", "builder")
        if work.state == "done" and hired and work.ref not in with_paper:
            yield Found((work.ref,), f"For “{work.title}” no paper is recorded.")
