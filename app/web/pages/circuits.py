"""Circuits: the list, and one circuit with what is on it."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, render_template, url_for
from flask.typing import ResponseReturnValue

from app.domain.network import Network, downstream
from app.domain.record import Circuit, Point, Record, Room, Tie
from app.domain.record.choices import ARRANGEMENTS, CIRCUIT_USES, GRADES
from app.web.addresses import Link, delete_url, edit_url, item_url
from app.web.files_view import FilesView, files_of
from app.web.lists import ListView, list_view
from app.web.results_view import ResultsView, results_at
from app.web.session import needed, supply
from app.web.words import Facts, facts_of, with_board

bp = Blueprint("circuits", __name__, url_prefix="/homes/<home>/circuits")
HEADS = ("Circuit", "Way", "Used for", "Arrangement", "Points")


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexPage:
    """The list of circuits.

    Attributes:
        title: Heading.
        list: The circuits, filtered and sorted as asked.
        new: Address of the form of a new circuit.
    """

    title: str
    list: ListView
    new: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitPage:
    """One circuit.

    Attributes:
        title: Its name.
        answer: Where it starts and what is on it, in one sentence.
        ways: The ways that it is wired to, with addresses.
        rows: Point with its address, room, what it is tied by, how that is known.
        also: Points on it in part: label, address, how.
        facts: What is recorded of it.
        figures: Address of its arithmetic.
        files: Its photographs and papers.
        results: What was measured at it.
        edit: Address of its form.
        delete: Address where deleting is asked about.
    """

    title: str
    answer: str
    ways: tuple[Link, ...]
    rows: tuple[tuple[Link, str | None, str, str], ...]
    also: tuple[tuple[str, str, str], ...]
    facts: Facts
    figures: str
    files: FilesView
    results: ResultsView
    edit: str
    delete: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """List the circuits."""
    net = supply(home)
    rows = [_row(net, circuit) for circuit in net.record.circuits]
    page = IndexPage(
        title="Circuits",
        list=list_view(HEADS, rows, numbers=(4,)),
        new=url_for("items.new", home=home, plural="circuits"),
    )
    return render_template("pages/circuits/index.html", page=page)


@bp.get("/<ref>/")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show one circuit with what is on it."""
    net = supply(home)
    circuit = needed(net.record, Circuit, ref)
    return render_template("pages/circuits/show.html", page=_page(net, circuit))


def _row(net: Network, circuit: Circuit) -> tuple[object, ...]:
    fed = downstream(net, circuit.ref)
    use, arrangement = CIRCUIT_USES[circuit.use], ARRANGEMENTS[circuit.arrangement]
    return (
        (circuit.title, item_url(net.record.home.ref, circuit)),
        ", ".join(with_board(net.record, ref) for ref in circuit.ways) or None,
        None if circuit.use == "unknown" else use,
        None if circuit.arrangement == "unknown" else arrangement,
        str(sum(point.ref in fed for point in net.record.points)),
    )


def _page(net: Network, circuit: Circuit) -> CircuitPage:
    record, home = net.record, net.record.home.ref
    fed = downstream(net, circuit.ref)
    points = [point for point in record.points if point.ref in fed]
    return CircuitPage(
        title=circuit.title,
        answer=_answer(record, circuit, len(points)),
        ways=tuple(
            (with_board(record, r), item_url(home, record.by_ref[r]))
            for r in circuit.ways
            if r in record.by_ref
        ),
        rows=tuple(_point(record, point) for point in points),
        also=_in_part(net, circuit, fed),
        facts=facts_of(circuit, record, skip=("name", "ways")),
        figures=url_for("figures.show", home=home, ref=circuit.ref),
        files=files_of(record, circuit),
        results=results_at(record, circuit),
        edit=edit_url(home, circuit),
        delete=delete_url(home, circuit),
    )


def _in_part(
    net: Network, circuit: Circuit, fed: frozenset[str]
) -> tuple[tuple[str, str, str], ...]:
    """Return points whose line, neutral or box belongs to it, but not all of them."""
    record = net.record
    by_neutral = downstream(net, circuit.ref, "neutral")
    present = {t.point for t in record.ties if _is_present(t, circuit)}
    found = []
    for point in record.points:
        url = item_url(record.home.ref, point)
        if point.ref in by_neutral - fed:
            found.append((point.title, url, "only its neutral returns here"))
        elif point.ref in fed - by_neutral:
            found.append((point.title, url, "its neutral returns elsewhere"))
        if point.ref in present:
            found.append((point.title, url, "its conductors are in that box too"))
    return tuple(found)


def _is_present(tie: Tie, circuit: Circuit) -> bool:
    return tie.role == "present" and tie.tied_to == circuit.ref


def _answer(record: Record, circuit: Circuit, points: int) -> str:
    ways = " and ".join(with_board(record, ref) for ref in circuit.ways)
    start = f"It starts from {ways}" if ways else "Where it starts is not recorded"
    boards = [board.name for board in record.boards if board.fed_from == circuit.ref]
    feeds = f"; it feeds {', '.join(boards)}" if boards else ""
    what = "one point is" if points == 1 else f"{points} points are"
    return f"{start}{feeds}; {what} on it by the record."


def _point(record: Record, point: Point) -> tuple[Link, str | None, str, str]:
    room = record.find(Room, point.room)
    ties = [tie for tie in record.ties_of(point.ref) if tie.role == "feeds"]
    fed = ", ".join(with_board(record, tie.tied_to) for tie in ties)
    known = ", ".join(dict.fromkeys(GRADES[tie.grade] for tie in ties))
    return (
        (point.title, item_url(record.home.ref, point)),
        room.name if room else None,
        fed,
        known,
    )
