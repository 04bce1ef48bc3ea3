"""What the rounds have shown, with the reasons, and writing it into the record."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.record import Record, Room
from app.domain.trace import (
    STATUSES,
    PointState,
    Status,
    answer_of,
    applied,
    cannot_show,
    naming,
    reasons_of,
    states,
    survey_of,
)
from app.services.homes import digest, save
from app.web.addresses import item_url
from app.web.rounds_view import all_conflicts, found_so_far, person
from app.web.session import change, opened, opened_to_change, supply

bp = Blueprint("findings", __name__, url_prefix="/homes/<home>/rounds/results")
# What needs a second look stands before what is settled; what is open comes last.
ORDER: tuple[Status, ...] = (
    "contradiction",
    "more_than_one_way",
    "not_testable",
    "unaffected",
    "found",
    "several_fit",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What is known of a point.

    Attributes:
        title: What it is called.
        room: Name of its room; None when it has none.
        url: Its page.
        answer: The answer in a sentence.
        reasons: The readings that say so.
    """

    title: str
    room: str | None
    url: str
    answer: str
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultsPage:
    """What the rounds have shown.

    Attributes:
        title: Heading.
        answer: What is known, in one sentence.
        groups: Status in words, with the points of it.
        conflicts: Where people saw different things.
        hidden: What switching off cannot show: sentence, and names.
        changes: What writing it down would change.
        left_alone: What would not be written, and why.
        mark: Digest of what the changes rest on.
        start: Address that starts the next round.
        stale: Whether marks came in since the page was shown.
    """

    title: str
    answer: str
    groups: tuple[tuple[str, tuple[Shown, ...]], ...]
    conflicts: tuple[str, ...]
    hidden: tuple[tuple[str, tuple[str, ...]], ...]
    changes: tuple[str, ...]
    left_alone: tuple[str, ...]
    mark: str
    start: str
    stale: bool


@bp.get("")
def index(home: str) -> ResponseReturnValue:
    """Show what the rounds have shown, and what writing it down would change."""
    return _page(home)


@bp.post("")
def apply(home: str) -> ResponseReturnValue:
    """Write what was found into the record, as one change."""
    with change() as connection:
        start = opened_to_change(connection, home)
        if request.form.get("mark") != _mark(start.record):
            return _page(home, stale=True), 409
        net = start.worked.net
        done = applied(net, states(survey_of(net)), _today(), person())
        noun = "change" if len(done.changes) == 1 else "changes"
        sentence = f"Found by switching off: {len(done.changes)} {noun}."
        number = save(connection, start, done.record, sentence)
    return redirect(url_for(".index", home=home, done=number), 303)


def _today() -> date:
    return datetime.now().astimezone().date()


def _page(home: str, *, stale: bool = False) -> str:
    record, net = opened(home).record, supply(home)
    survey = survey_of(net)
    known = states(survey)
    called = naming(record)
    done = applied(net, known, _today(), person())
    page = ResultsPage(
        title="What the rounds have shown",
        answer=found_so_far(survey, known),
        groups=tuple(_groups(record, known)),
        conflicts=all_conflicts(record),
        hidden=tuple(
            (each.sentence, tuple(map(called, each.refs)))
            for each in cannot_show(survey, known)
        ),
        changes=done.changes,
        left_alone=tuple(each.sentence for each in done.left_alone),
        mark=_mark(record),
        start=url_for("rounds.new", home=home),
        stale=stale,
    )
    return render_template("pages/rounds/results.html", page=page)


def _groups(
    record: Record, known: Mapping[str, PointState]
) -> Iterator[tuple[str, tuple[Shown, ...]]]:
    for status in ORDER:
        these = [state for state in known.values() if state.status == status]
        if these:
            yield STATUSES[status], tuple(_shown(record, state) for state in these)


def _shown(record: Record, state: PointState) -> Shown:
    called = naming(record)
    item = record.by_ref[state.point]
    room = record.find(Room, getattr(item, "room", None))
    return Shown(
        title=item.title,
        room=room.name if room else None,
        url=item_url(record.home.ref, item),
        answer=answer_of(state, called),
        reasons=reasons_of(state, called),
    )


def _mark(record: Record) -> str:
    """Return a digest of all that the changes shown rest on."""
    looks = (*record.rounds, *record.readings)
    return digest(
        (*looks, *record.devices, *record.circuits, *record.points, *record.ties)
    )
