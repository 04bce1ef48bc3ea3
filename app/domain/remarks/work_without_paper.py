"""Known work has no paper.

Looks at:
    Boards and circuits of 2005 or later, and work that an electrician or a builder has
    done, and whether there is a paper for them of the kind that such work gets: an
    invoice or a plan is none.
Why it matters:
    A certificate says who answers for the work and what was measured. Buyers, insurers
    and the next electrician ask for it.
What to do:
    Ask whoever did it, or the local authority for its register. If there is none, an
    inspection report says how it stands today.
Source:
    England and Wales: the Building Regulations ask for notice of a new circuit or board
    since 1 January 2005 (from memory). Everywhere: BS 7671:2018+A2:2022, 644; its
    Minor Works Certificate is not for a new circuit or a board (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.may_i import JOBS, job_titled
from app.domain.record import Paper, Work
from app.domain.record.choices import PAPER_KINDS
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking, lacks
from app.domain.remarks._sight import Sight, year_of

KIND = RemarkKind(code="work-without-paper", rank="record", group="papers")

SINCE = 2005
HIRED = ("electrician", "registered", "builder")
# BS 7671:2018+A2:2022, 644, and what building control or a scheme gives (from memory).
FOR_ANY = frozenset(
    {"installation_certificate", "compliance", "completion", "regularisation"}
)
# Work that a Minor Works Certificate is not for, as “May I?” looks at jobs.
MORE_THAN_MINOR = ("new_circuit", "consumer_unit", "rewire")


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
    for work in sight.record.works:
        if work.state == "done" and work.done_by in HIRED:
            yield from _of_work(sight, work)


def _of_work(sight: Sight, work: Work) -> Iterator[Outcome]:
    """Yield that work has no paper of the right kind, or one that nobody has named."""
    papers = [paper for paper in sight.record.papers if paper.work == work.ref]
    kinds = {paper.kind for paper in papers}
    if kinds & _right(work):
        return
    if unnamed := [paper.ref for paper in papers if paper.kind == "unknown"]:
        yield lacks(unnamed[0], "what it is")
    elif papers:
        yield Found((work.ref, *(p.ref for p in papers)), _only(work, papers))
    else:
        yield Found((work.ref,), f"For “{work.title}” no paper is recorded.")


def _right(work: Work) -> frozenset[str]:
    """Return the kinds of paper that work of its sort gets."""
    done = _done(work)
    minor = () if done in MORE_THAN_MINOR else ("minor_works",)
    letter = ("network_letter",) if done == "network_side" else ()
    return FOR_ANY | {*minor, *letter}


def _done(work: Work) -> str:
    """Return what is done in it, as “May I?” looks at the job; empty: it does not say.

    A job is named by its title, or by its code.
    """
    job = job_titled(work.job) or JOBS.get(work.job)
    return str(job.sets.get("work", "")) if job else ""


def _only(work: Work, papers: list[Paper]) -> str:
    found = ", ".join(dict.fromkeys(PAPER_KINDS[paper.kind] for paper in papers))
    said = f"For “{work.title}” no certificate is recorded, only: {found}."
    if any(paper.kind == "minor_works" for paper in papers):
        said += " A Minor Works Certificate is not for a new circuit or a board."
    return said
