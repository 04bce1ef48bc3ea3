"""How far a record has come: what is known, what is not, what is worth doing next."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from app.domain.conditions import recorded_bad, seen_as
from app.domain.fault import Fault
from app.domain.kinds import INTAKE_KINDS
from app.domain.record import Record
from app.domain.reminders import Due
from app.domain.unknowns import unanswered_sources

NextStep = tuple[str, str, tuple[tuple[str, str], ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """The state of a record, in sentences.

    Attributes:
        known: What is known.
        unknown: What is not.
        next_step: The one thing most worth doing next.
        next_endpoint: Page where that is done.
        next_arguments: What that page is told.
    """

    known: str
    unknown: str
    next_step: str
    next_endpoint: str
    next_arguments: tuple[tuple[str, str], ...] = ()


def progress(
    record: Record, found: Iterable[Fault], waiting: Iterable[Due] = ()
) -> Progress:
    """Return how far a record has come.

    Args:
        record: The record.
        found: Its faults.
        waiting: What is to be done again; what was tried and failed goes first.
    """
    faults = tuple(found)
    tied = len(record.points) - sum(f.code == "tied_to_nothing" for f in faults)
    seen = {t.point for t in record.ties if t.role == "feeds" and t.grade in "345"}
    known = (
        f"{_count(len(record.boards), 'board')}, {_count(len(record.rooms), 'room')} "
        f"and {_count(len(record.points), 'point')} are written down"
        f"{_fed(len(record.points), tied, len(seen))}."
    )
    urgent = _something_wrong(record) or _guarding_nobody(waiting)
    step, endpoint, arguments = urgent or _next(record, faults)
    return Progress(
        known=known
        if record.rooms or record.boards
        else "Nothing is written down yet.",
        unknown=_unknown(record, faults),
        next_step=step,
        next_endpoint=endpoint,
        next_arguments=arguments,
    )


def _fed(points: int, tied: int, seen: int) -> str:
    """Say of how many points it is recorded what feeds them, and how many were seen."""
    if not points:
        return ""
    if not tied:
        return "; what feeds a point is recorded for none of them"
    every = "all" if tied == points else str(tied)
    return (
        f"; what feeds a point is recorded for {every} of them, and seen or in a "
        f"document for {seen or 'none'}"
    )


def _unknown(record: Record, faults: tuple[Fault, ...]) -> str:
    loose = sum(fault.code == "tied_to_nothing" for fault in faults)
    found = [f"what feeds {_count(loose, 'point')}"] if loose else []
    if record.home.earthing == "unknown":
        found.append("the earthing arrangement")
    if unanswered_sources(record):
        found.append("whether anything else can feed the home")
    away = [r for r in record.rooms if r.looked_at in ("not_yet", "no_access")]
    if away:
        found.append(f"what is in {_count(len(away), 'room')} not looked at")
    if not found:
        return ""
    return f"Not known: {'; '.join(found)}."


def _next(record: Record, faults: tuple[Fault, ...]) -> NextStep:
    """Return the first step that is called for, in the order of the work."""
    steps = (
        _contradiction(faults),
        _no_intake(record),
        _no_board(record),
        _empty_board(record),
        _no_rooms(record),
        _room_to_look_at(record),
        _open_source(record),
        ("Answer the open questions", "faults.index", ()) if faults else None,
    )
    ask: NextStep = ("Ask what feeds a point", "ask.index", ())
    return next((step for step in steps if step is not None), ask)


def _guarding_nobody(waiting: Iterable[Due]) -> NextStep | None:
    """Return what a failed alarm calls for, else what a failed test button does."""
    failed = [due for due in waiting if due.state == "now"]
    for due in failed:
        if due.kind == "alarm_test" and due.failed_on:
            step = "Replace the alarm that did not work, or have it mended today"
            return step, "reminders.index", ()
    for due in failed:
        if due.kind == "rcd_button" and (due.failed_on or due.failed):
            name = due.about.title if due.about else "the RCD"
            step = f"Call an electrician: the test button of {name} failed"
            return step, "reminders.index", ()
    return None


def _something_wrong(record: Record) -> NextStep | None:
    for item in recorded_bad(record):
        words = f"Leave {item.title} alone and call: {seen_as(item)}"
        return words, "call.index" if item.sort == "intake" else "remarks.index", ()
    return None


def _contradiction(faults: tuple[Fault, ...]) -> NextStep | None:
    wrong = any(fault.wrong for fault in faults)
    return (
        ("Put right what cannot be as written", "faults.index", ()) if wrong else None
    )


def _no_intake(record: Record) -> NextStep | None:
    if any(INTAKE_KINDS[item.kind].carries_supply for item in record.intake):
        return None
    return "Write down what is in the intake cupboard", "intake.index", ()


def _no_board(record: Record) -> NextStep | None:
    step: NextStep = ("Write down the board", "items.new", (("plural", "boards"),))
    return None if record.boards else step


def _empty_board(record: Record) -> NextStep | None:
    for board in record.boards:
        if not record.devices_of(board.ref):
            return (
                f"Enter the ways of {board.name}",
                "boards.ways",
                (("ref", board.ref),),
            )
    return None


def _no_rooms(record: Record) -> NextStep | None:
    step: NextStep = ("List the rooms in the order you walk", "rooms.quick", ())
    return None if record.rooms else step


def _room_to_look_at(record: Record) -> NextStep | None:
    for room in record.rooms:
        if room.looked_at == "not_yet":
            return f"Look at {room.name}", "walk.room", (("ref", room.ref),)
    return None


def _open_source(record: Record) -> NextStep | None:
    if not unanswered_sources(record):
        return None
    return "Say what else can feed the home", "sources.index", ()


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
