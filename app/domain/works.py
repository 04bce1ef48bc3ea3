"""Work: what was planned, what was done, and the paper that came of it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date

from app.domain.days import in_words
from app.domain.edits import added, new_ref, replaced
from app.domain.record import Device, IntakeItem, Item, Paper, Record, Source, Work


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanFor:
    """What a plan for switching off can be made for, of what a work touches.

    Attributes:
        refs: What the plan is asked for: rooms, boards, circuits, points.
        says: What stands in another's place, and what is left out and why, in
            sentences.
    """

    refs: tuple[str, ...]
    says: tuple[str, ...]


def plan_for(record: Record, work: Work) -> PlanFor:
    """Return what the plan for switching off is asked for before a work.

    A device is worked on in its board, so that the board stands for it.
    """
    items = [record.by_ref[ref] for ref in work.about]
    out = [i for i in items if isinstance(i, IntakeItem | Source)]
    refs = (i.board if isinstance(i, Device) else i.ref for i in items if i not in out)
    return PlanFor(refs=tuple(dict.fromkeys(refs)), says=tuple(_left_out(items)))


def _left_out(items: list[Item]) -> Iterator[str]:
    if devices := _titles(i for i in items if isinstance(i, Device)):
        yield f"The plan for switching off is for the whole board of {devices}."
    if intake := _titles(i for i in items if isinstance(i, IntakeItem)):
        yield (
            f"No plan for switching off covers {intake}: what comes before the boards "
            "is for whoever it belongs to, or for an electrician."
        )
    if sources := _titles(i for i in items if isinstance(i, Source)):
        yield (
            f"No plan for switching off covers {sources}: a source stays live whatever "
            "is switched off. Ask an electrician."
        )


def _titles(items: Iterable[Item]) -> str:
    return ", ".join(item.title for item in items)


def in_turn(record: Record) -> tuple[Work, ...]:
    """Return the work of a home: what is planned, then what was done, newest first."""
    order = {"planned": 0, "unknown": 1, "done": 2, "given_up": 3}
    done = sorted(record.works, key=lambda w: w.no_later_than or date.min, reverse=True)
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


def day_of_work(work: Work) -> str:
    """Return the day that counts of work, in words; empty where none is known."""
    if work.state != "done":
        return in_words(work.planned_for) if work.planned_for else ""
    if work.done_on or not work.done_before:
        return in_words(work.done_on) if work.done_on else ""
    return f"no later than {in_words(work.done_before)}"


def papers_of(record: Record, work: str) -> tuple[Paper, ...]:
    """Return the papers that belong to work."""
    return tuple(paper for paper in record.papers if paper.work == work)
