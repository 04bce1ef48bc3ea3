"""The record as it stood at a moment, and what differs between two."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from flask import Blueprint, Response, render_template, url_for
from flask.typing import ResponseReturnValue

from app.domain.record import SORTS, Board, Circuit, Point, Record, Tie
from app.domain.told import facts, name_in
from app.errors import InvalidError
from app.interchange import to_document
from app.services.history import AsOf, compare, when
from app.store.homes import began_at
from app.web.changes_view import ItemView, item_views
from app.web.moments import MomentBoxes, looked_up, moment_boxes, today_in_the_uk
from app.web.session import opened, read

bp = Blueprint("past", __name__, url_prefix="/homes/<home>/past")
COUNTED = (Board, Circuit, Point, Tie)
ONE = ("Day", "Time, if it matters")
FROM = ("From day", "From time")
TO = ("To day", "To time")
NOTHING_MORE = "Nothing more was recorded"


@dataclass(frozen=True, slots=True, kw_only=True)
class SortView:
    """The items of one sort as they stood.

    Attributes:
        label: What the list is called.
        noun: What one of them is called.
        rows: Each item, and what was recorded of it.
    """

    label: str
    noun: str
    rows: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StoodView:
    """The record as it stood.

    Attributes:
        when: The moment, in words.
        counts: How many boards, circuits, points and ties there were.
        home: What was recorded of the home itself, a sentence a field.
        sorts: Its items, sort by sort.
        same: Whether it still stands so.
        download: Address of it as a document.
        compare: Address where it is compared with today.
    """

    when: str
    counts: str
    home: tuple[str, ...]
    sorts: tuple[SortView, ...]
    same: bool
    download: str
    compare: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PastPage:
    """A page that asks for a moment and shows the record as it stood.

    Attributes:
        title: Heading.
        boxes: What was asked for.
        began: Since when the home is recorded.
        stood: The record; None when no moment is named.
        compare: Address where two moments are compared.
        changes: Address of the changes.
    """

    title: str
    boxes: MomentBoxes
    began: str
    stood: StoodView | None
    compare: str
    changes: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ComparePage:
    """A page that says what differs between two moments.

    Attributes:
        title: Heading.
        boxes: What was asked for: the earlier moment, the later.
        between: Both moments in words; empty when they are not both named.
        items: What differs, item by item.
        back: Address of the record as it stood.
    """

    title: str
    boxes: tuple[MomentBoxes, MomentBoxes]
    between: str
    items: tuple[ItemView, ...]
    back: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Ask for a moment, and show the record as it stood."""
    own = opened(home)
    boxes = moment_boxes("", ONE, start=today_in_the_uk())
    boxes, stood = looked_up(read(), own, boxes)
    page = PastPage(
        title=f"As it stood on {when(stood.at)}" if stood else "The record as it stood",
        boxes=boxes,
        began=when(began_at(read(), own.key)),
        stood=_stood(home, boxes, stood) if stood else None,
        compare=url_for(".differences", home=home),
        changes=url_for("changes.index", home=home),
    )
    status = 422 if boxes.wrong else 200
    return render_template("pages/past/index.html", page=page), status


@bp.get("/record.json")
def download(home: str) -> ResponseReturnValue:
    """Give the record as it stood, as a document; without a day, as it stands."""
    own = opened(home)
    boxes, stood = looked_up(read(), own, moment_boxes("", ONE))
    if boxes.wrong:
        raise InvalidError(boxes.day_error or boxes.time_error)
    record = stood.record if stood else own.record
    response = Response(to_document(record), mimetype="application/json")
    name = f"{own.record.home.ref}-{boxes.day or today_in_the_uk()}.json"
    response.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    response.headers["Cache-Control"] = "no-store"
    return response


@bp.get("/compare")
def differences(home: str) -> ResponseReturnValue:
    """Ask for two moments, and say what differs."""
    own = opened(home)
    earlier, first = looked_up(read(), own, moment_boxes("from_", FROM))
    later = moment_boxes("to_", TO, start=today_in_the_uk())
    later, second = looked_up(read(), own, later)
    both = sorted((s for s in (first, second) if s), key=lambda each: each.at)
    compared = compare(*both) if len(both) == 2 else None
    page = ComparePage(
        title="What differs between two days",
        boxes=(earlier, later),
        between=f"{when(both[0].at)} → {when(both[1].at)}" if compared else "",
        items=item_views(home, compared.items) if compared else (),
        back=url_for(".index", home=home),
    )
    status = 422 if earlier.wrong or later.wrong else 200
    return render_template("pages/past/compare.html", page=page), status


def _stood(home: str, boxes: MomentBoxes, found: AsOf) -> StoodView:
    named: dict[str, Any] = {"day": boxes.day, "time": boxes.time or None}
    since: dict[str, Any] = {f"from_{name}": value for name, value in named.items()}
    record = found.record
    return StoodView(
        when=when(found.at),
        counts=_counts(record),
        home=facts(record.home, name_in(record)),
        sorts=_sorts(record),
        same=found.until is None,
        download=url_for(".download", home=home, **named),
        compare=url_for(".differences", home=home, **since, to_day=today_in_the_uk()),
    )


def _sorts(record: Record) -> tuple[SortView, ...]:
    name_of = name_in(record)
    return tuple(
        SortView(
            label=Record.model_fields[cls.plural].title or cls.plural,
            noun=cls.noun,
            rows=tuple(
                (
                    f"{item.title} ({item.ref})",
                    "; ".join(facts(item, name_of)) or NOTHING_MORE,
                )
                for item in record.of(cls)
            ),
        )
        for cls in SORTS.values()
        if record.of(cls)
    )


def _counts(record: Record) -> str:
    counts = [(len(record.of(cls)), cls.noun.lower()) for cls in COUNTED]
    said = [f"{n} {noun}{'' if n == 1 else 's'}" for n, noun in counts]
    return f"{', '.join(said[:-1])} and {said[-1]}"
