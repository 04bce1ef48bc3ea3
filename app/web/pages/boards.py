"""Boards: the list, one board as it stands on the wall, its ways in a quick table."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.ask import ask_room, ask_way
from app.domain.chain import chains
from app.domain.failed import failed_rcds
from app.domain.kinds import DEVICE_KINDS
from app.domain.network import Network, downstream
from app.domain.record import Board, Device, Record, Room
from app.drawing.board import draw_board
from app.web.addresses import Link, delete_url, edit_url, item_url
from app.web.files_view import FilesView, files_of
from app.web.ledes import board_lede, counted, listed, outside_feeds, way_lede
from app.web.protection import failed_before
from app.web.quick import Table, saved, sent, shown, with_empty_rows
from app.web.session import change, needed, opened, opened_to_change, supply
from app.web.way_table import names_again, way_layout
from app.web.words import Facts, facts_of, quantity

bp = Blueprint("boards", __name__, url_prefix="/homes/<home>/boards")
# Names of circuits that are said to be had by another too, at most.
MOST_NAMED = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexPage:
    """The list of boards.

    Attributes:
        title: Heading.
        rows: Board with its address, where it is, what feeds it, how many devices.
        new: Address of the form of a new board.
    """

    title: str
    rows: tuple[tuple[Link, str | None, str | None, str], ...]
    new: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Lit:
    """What is brought forward on a board's face.

    Attributes:
        sentence: What it is, and what goes with it.
        links: Things that go with it: label and address.
    """

    sentence: str
    links: tuple[Link, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardPage:
    """One board.

    Attributes:
        title: Its name.
        answer: What it is fed from and what it feeds, in one sentence.
        cautions: RCDs on it and before it that are not to be counted on.
        drawing: Its face, as SVG.
        lit: What is brought forward, if anything is.
        rows: Way with its address, device, label found, what it feeds, in use.
        rooms: Rooms that it serves: name, address that brings their ways forward,
            and whether what is brought forward serves the room.
        facts: Its own facts.
        has_devices: Whether anything stands on it.
        ways: Address of the quick table.
        typed: Address where its labels are typed as a list.
        labels: Address of its labels.
        chart: Address of its circuit chart.
        new_device: Address of the form of one more device.
        files: Its photographs and papers.
        edit: Address of its form.
        delete: Address where deleting is asked about.
    """

    title: str
    answer: str
    cautions: tuple[str, ...]
    drawing: str
    lit: Lit | None
    rows: tuple[tuple[Link, str, str | None, str | None, str | None], ...]
    rooms: tuple[tuple[str, str, bool], ...]
    facts: Facts
    has_devices: bool
    ways: str
    typed: str
    labels: str
    chart: str
    new_device: str
    files: FilesView
    edit: str
    delete: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WaysPage:
    """The quick table of a board's ways.

    Attributes:
        title: Heading.
        table: The table.
        back: Address to go back to.
    """

    title: str
    table: Table
    back: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """List the boards."""
    record = opened(home).record
    rows = tuple(
        (
            (board.name, url_for(".show", home=home, ref=board.ref)),
            _room(record, board),
            listed(feeds) if (feeds := _feeds(record, board)) else None,
            str(len(record.devices_of(board.ref))),
        )
        for board in record.boards
    )
    new = url_for("items.new", home=home, plural="boards")
    page = IndexPage(title="Boards", rows=rows, new=new)
    return render_template("pages/boards/index.html", page=page)


@bp.get("/<ref>/")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show one board as it stands on the wall."""
    net = supply(home)
    board = needed(net.record, Board, ref)
    return render_template("pages/boards/show.html", page=_page(net, board))


@bp.get("/<ref>/ways")
def ways(home: str, ref: str) -> ResponseReturnValue:
    """Show the quick table of a board's ways."""
    record = opened(home).record
    board = needed(record, Board, ref)
    table = shown(way_layout(board), record, record.devices_of(ref))
    return _show_ways(record, board, table)


@bp.post("/<ref>/ways")
def enter_ways(home: str, ref: str) -> ResponseReturnValue:
    """Take a board's ways from the quick table, all or none."""
    with change() as connection:
        start = opened_to_change(connection, home)
        board = needed(start.record, Board, ref)
        table = sent(way_layout(board), start.record)
        sentence = _entered(start.record, board, table)
        done = saved(connection, start, table, sentence)
        if done is not None:
            then = ".ways" if request.form.get("then") == "more" else ".show"
            return redirect(url_for(then, home=home, ref=ref, done=done or None), 303)
    with_empty_rows(table, start.record)
    return _show_ways(start.record, board, table), 409 if table.stale else 422


def _page(net: Network, board: Board) -> BoardPage:
    record, home = net.record, net.record.home.ref
    lit, which = _lit(net, board)
    devices = record.devices_of(board.ref)
    return BoardPage(
        title=board.name,
        answer=board_lede(net, board),
        cautions=_cautions(net, devices),
        drawing=draw_board(record, board.ref, _lighting(record, board), which),
        lit=lit,
        rows=tuple(_row(net, device) for device in devices),
        rooms=_rooms(net, board, which),
        facts=facts_of(board, record, skip=("name", "fed_from", "room")),
        has_devices=bool(devices),
        ways=url_for(".ways", home=home, ref=board.ref),
        typed=url_for("typed_lists.show", home=home, ref=board.ref),
        labels=url_for("labels.show", home=home, ref=board.ref),
        chart=url_for("chart.show", home=home, ref=board.ref),
        new_device=url_for("items.new", home=home, plural="devices", board=board.ref),
        files=files_of(record, board),
        edit=edit_url(home, board),
        delete=delete_url(home, board),
    )


def _lighting(record: Record, board: Board) -> Callable[[str], str | None]:
    """A touch on a device brings it forward on this page; elsewhere it leads there."""

    def link(ref: str) -> str | None:
        item = record.by_ref.get(ref)
        if isinstance(item, Device) and item.board == board.ref:
            return _lighting_url(record, board, ref)
        return item_url(record.home.ref, item) if item else None

    return link


def _lighting_url(record: Record, board: Board, ref: str) -> str:
    home = record.home.ref
    return url_for(".show", home=home, ref=board.ref, lit=ref, _anchor="face")


def _lit(net: Network, board: Board) -> tuple[Lit | None, frozenset[str]]:
    item = net.record.by_ref.get(request.args.get("lit", ""))
    if isinstance(item, Device):
        return _lit_way(net, item), frozenset({item.ref})
    if isinstance(item, Room):
        ways = [w.ref for w in ask_room(net, item).ways]
        here = [d for d in net.record.devices_of(board.ref) if d.ref in ways]
        links = tuple((d.title, item_url(net.record.home.ref, d)) for d in here)
        sentence = f"{item.name} is served, on this board, by:"
        return Lit(sentence=sentence, links=links), frozenset(d.ref for d in here)
    return None, frozenset()


def _lit_way(net: Network, device: Device) -> Lit:
    home, answer = net.record.home.ref, ask_way(net, device)
    named = (*answer.circuits, *answer.boards, *answer.rooms)
    links = [(n.title, item_url(home, net.record.by_ref[n.ref])) for n in named]
    sentence = f"{device.title}. {way_lede(net, answer)}"
    open_way = (f"Open {device.title}", item_url(home, device))
    return Lit(sentence=sentence, links=(open_way, *links))


def _cautions(net: Network, devices: Iterable[Device]) -> tuple[str, ...]:
    failed = failed_rcds(net)
    if not failed:
        return ()
    before = (chain for device in devices for chain in chains(net, device.ref))
    return failed_before(before)


def _row(
    net: Network, device: Device
) -> tuple[Link, str, str | None, str | None, str | None]:
    record, failure = net.record, failed_rcds(net).get(device.ref)
    kind = DEVICE_KINDS[device.kind]
    rating = ""
    if "rated_current_a" in kind.fields:
        rating = f", {quantity(device.rated_current_a, 'A')}"
    fed = ", ".join(circuit.title for circuit in record.circuits_of(device.ref))
    boards = [b.name for b in record.boards if b.fed_from == device.ref]
    return (
        (f"Way {device.way}" if device.way else device.ref,
         item_url(record.home.ref, device)),
        f"{kind.label}{rating}{f', {failure.short}' if failure else ''}",
        "nothing written" if device.label_found == "" else device.label_found,
        ", ".join(part for part in (fed, *boards) if part) or _no_feed(record, device),
        None if device.in_use == "unknown" else device.in_use.replace("_", " "),
    )  # fmt: skip


def _no_feed(record: Record, device: Device) -> str | None:
    """What stands in the place of a circuit: the ways of an RCD, or nothing known."""
    on_board = record.devices_of(device.board)
    below = sum(d.fed_from == device.ref for d in on_board)
    if below:
        return f"{counted(below, 'device')} on this board"
    return None if DEVICE_KINDS[device.kind].outgoing else "-"


def _rooms(
    net: Network, board: Board, lit: frozenset[str]
) -> tuple[tuple[str, str, bool], ...]:
    devices = [d.ref for d in net.record.devices_of(board.ref)]
    served = _rooms_fed(net, devices)
    touched = net.record.find(Room, request.args.get("lit"))
    forward = {touched.ref} if touched else _rooms_fed(net, lit)
    return tuple(
        (room.name, _lighting_url(net.record, board, room.ref), room.ref in forward)
        for room in net.record.rooms
        if room.ref in served
    )


def _rooms_fed(net: Network, devices: Iterable[str]) -> set[str | None]:
    fed = {ref for device in devices for ref in downstream(net, device)}
    return {point.room for point in net.record.points if point.ref in fed}


def _room(record: Record, board: Board) -> str | None:
    room = record.find(Room, board.room)
    return room.name if room else None


def _feeds(record: Record, board: Board) -> list[str]:
    return [_title(record, ref) or ref for ref in outside_feeds(record, board)]


def _title(record: Record, ref: str | None) -> str | None:
    item = record.by_ref.get(ref or "")
    return item.title if item else None


def _entered(record: Record, board: Board, table: Table) -> str:
    """Say what was done, and where a new circuit has the name of another."""
    said = f"Entered the ways of {board.name} ({board.ref})."
    for name in names_again(table, record)[:MOST_NAMED]:
        said += f" More than one circuit has the name “{name}” now."
    return said


def _show_ways(record: Record, board: Board, table: Table) -> str:
    page = WaysPage(
        title=f"Ways of {board.name}",
        table=table,
        back=url_for(".show", home=record.home.ref, ref=board.ref),
    )
    return render_template("pages/boards/ways.html", page=page)
