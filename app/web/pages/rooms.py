"""Rooms: the list in walking order, one room with its points, and the quick ways in."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.ask import ask_room
from app.domain.network import Network
from app.domain.record import Record, Room
from app.domain.record.choices import LOOKED_AT, STOREYS
from app.web.addresses import Link, delete_url, edit_url, item_url
from app.web.files_view import FilesView, files_of
from app.web.ledes import room_lede
from app.web.point_rows import Cell, point_rows
from app.web.point_table import point_layout
from app.web.protection import feed_back
from app.web.quick import (
    Column,
    Layout,
    Table,
    saved,
    sent,
    shown,
    with_empty_rows,
)
from app.web.session import change, needed, opened, opened_to_change, supply
from app.web.words import Facts, facts_of, with_board

bp = Blueprint("rooms", __name__, url_prefix="/homes/<home>/rooms")
ROOMS = Layout(
    cls=Room,
    first="name",
    columns=(
        Column(of="name", width="wide"),
        Column(of="storey"),
        Column(of="kind"),
        Column(of="looked_at", width="choice"),
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexPage:
    """The list of rooms.

    Attributes:
        title: Heading.
        rows: Room with its address, storey, number of points, looked at.
        quick: Address of the quick table.
        move: For each room: its name, and the address that moves it.
    """

    title: str
    rows: tuple[tuple[Link, str, str, str], ...]
    quick: str
    move: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomPage:
    """One room.

    Attributes:
        title: Its name.
        answer: Which ways serve it, in one sentence.
        cautions: What a hurried person must not miss.
        ways: These ways, with addresses.
        rows: Point with its address, circuits, how known, care.
        odd: Odd ones out, in sentences.
        unknowns: What is not known in it.
        facts: What is recorded of it.
        quick: Address of the quick table of its points.
        files: Its photographs and papers.
        edit: Address of its form.
        delete: Address where deleting is asked about.
        looked: Address that marks it as looked at.
    """

    title: str
    answer: str
    cautions: tuple[str, ...]
    ways: tuple[Link, ...]
    rows: tuple[tuple[Cell, ...], ...]
    odd: tuple[str, ...]
    unknowns: tuple[str, ...]
    facts: Facts
    quick: str
    files: FilesView
    edit: str
    delete: str


@dataclass(frozen=True, slots=True, kw_only=True)
class QuickPage:
    """A quick table.

    Attributes:
        title: Heading.
        about: What it is for, in one sentence.
        table: The table.
        back: Address to go back to.
    """

    title: str
    about: str
    table: Table
    back: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """List the rooms in the order of the walk."""
    record = opened(home).record
    page = IndexPage(
        title="Rooms",
        rows=tuple(_row(record, room) for room in record.rooms),
        quick=url_for(".quick", home=home),
        move=tuple(
            (r.name, url_for("items.move", home=home, plural="rooms", ref=r.ref))
            for r in record.rooms
        ),
    )
    return render_template("pages/rooms/index.html", page=page)


@bp.get("/<ref>/")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show which ways serve a room, and its points."""
    net = supply(home)
    return render_template(
        "pages/rooms/show.html", page=_page(net, needed(net.record, Room, ref))
    )


@bp.get("/quick/table")
def quick(home: str) -> ResponseReturnValue:
    """Show the quick table of rooms."""
    record = opened(home).record
    return _show(record, None, shown(ROOMS, record, record.rooms))


@bp.post("/quick/table")
def enter(home: str) -> ResponseReturnValue:
    """Take the rooms from the quick table, all or none."""
    with change() as connection:
        start = opened_to_change(connection, home)
        table = sent(ROOMS, start.record)
        done = saved(connection, start, table, "Entered the rooms.")
        if done is not None:
            then = ".quick" if request.form.get("then") == "more" else ".index"
            return redirect(url_for(then, home=home, done=done or None), 303)
    with_empty_rows(table, start.record)
    return _show(start.record, None, table), 409 if table.stale else 422


@bp.get("/<ref>/points")
def points(home: str, ref: str) -> ResponseReturnValue:
    """Show the quick table of a room's points."""
    record = opened(home).record
    room = needed(record, Room, ref)
    table = shown(point_layout(room), record, record.points_of(ref))
    return _show(record, room, table)


@bp.post("/<ref>/points")
def enter_points(home: str, ref: str) -> ResponseReturnValue:
    """Take a room's points from the quick table, all or none."""
    with change() as connection:
        start = opened_to_change(connection, home)
        room = needed(start.record, Room, ref)
        table = sent(point_layout(room), start.record)
        sentence = f"Entered the points of {room.name} ({ref})."
        done = saved(connection, start, table, sentence)
        if done is not None:
            then = ".points" if request.form.get("then") == "more" else ".show"
            return redirect(url_for(then, home=home, ref=ref, done=done or None), 303)
    with_empty_rows(table, start.record)
    return _show(start.record, room, table), 409 if table.stale else 422


def _row(record: Record, room: Room) -> tuple[Link, str, str, str]:
    return (
        (room.name, item_url(record.home.ref, room)),
        STOREYS[room.storey],
        str(len(record.points_of(room.ref))),
        LOOKED_AT[room.looked_at],
    )


def _page(net: Network, room: Room) -> RoomPage:
    record, home = net.record, net.record.home.ref
    answer = ask_room(net, room)
    return RoomPage(
        title=room.name,
        answer=room_lede(answer),
        cautions=feed_back(answer.can_feed_back),
        ways=tuple(
            (with_board(record, way.ref), item_url(home, record.by_ref[way.ref]))
            for way in answer.ways
        ),
        rows=point_rows(net, record.points_of(room.ref)),
        odd=answer.odd,
        unknowns=answer.unknowns,
        facts=facts_of(room, record, skip=("name",)),
        quick=url_for(".points", home=home, ref=room.ref),
        files=files_of(record, room),
        edit=edit_url(home, room),
        delete=delete_url(home, room),
    )


def _show(record: Record, room: Room | None, table: Table) -> str:
    home = record.home.ref
    if room is None:
        about = "List them in the order you would walk the house."
        back = url_for(".index", home=home)
    else:
        about = "One line for each point. Leave open what you do not know."
        back = url_for(".show", home=home, ref=room.ref)
    page = QuickPage(
        title=f"Points of {room.name}" if room else "Rooms in walking order",
        about=about,
        table=table,
        back=back,
    )
    return render_template("pages/quick.html", page=page)
