"""Work: what was planned, what was done, and the paper that came of it."""

from __future__ import annotations

from datetime import date

from app.domain.edits import added, new_ref, replaced
from app.domain.record import Paper, Record, Work


def in_turn(record: Record) -> tuple[Work, ...]:
    """Return the work of a home: what is planned, then what was done, newest first."""
    order = {"planned": 0, "unknown": 1, "done": 2, "given_up": 3}
    done = sorted(record.works, key=lambda w: w.done_on or date.min, reverse=True)
    return tuple(sorted(done, key=lambda w: order[w.state]))


def finished(record: Record, work: Work, paper: Paper | None = None) -> Record:
    """Return the record with work as it was done, and with the paper that it has.

    The paper is about the same things; its reference is made here.
    """
    record = replaced(record, work.ref, work.model_copy(update={"state": "done"}))
    if paper is None:
        return record
    own = {"ref": new_ref(record, Paper), "work": work.ref, "about": work.about}
    return added(record, paper.model_copy(update=own))


def papers_of(record: Record, work: str) -> tuple[Paper, ...]:
    """Return the papers that belong to work."""
    return tuple(paper for paper in record.papers if paper.work == work)


def works_at(record: Record, ref: str) -> tuple[Work, ...]:
    """Return the work that names a thing."""
    return tuple(work for work in in_turn(record) if ref in work.about)
