"""One way, or another device of a board: what it feeds, and what it is fed from."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, render_template, url_for
from flask.typing import ResponseReturnValue

from app.domain.answers import Feeding, WayAnswer
from app.domain.ask import ask_way
from app.domain.kinds import DEVICE_KINDS, KIND_HELP
from app.domain.network import Network
from app.domain.record import Board, Device, fields_beside
from app.domain.record.choices import CARE
from app.web.addresses import Link, delete_url, edit_url, item_url
from app.web.chains import ChainView, chain_views
from app.web.files_view import FilesView, files_of
from app.web.ledes import listed, way_lede
from app.web.protection import failed_before, feed_back
from app.web.results_view import ResultsView, results_at
from app.web.session import needed, supply
from app.web.words import Facts, facts_of

bp = Blueprint("devices", __name__, url_prefix="/homes/<home>/devices")


@dataclass(frozen=True, slots=True, kw_only=True)
class DevicePage:
    """One device.

    Attributes:
        title: Its way number, or what it is.
        answer: What it feeds, in one sentence.
        cautions: What a hurried person must not miss.
        missed: Points that would be missed: label, address, what is missed.
        by_room: Rooms with the points in each that it feeds: label, address, and what
            of them is fed or returns elsewhere.
        circuits: Circuits that it feeds, with addresses.
        boards: Boards that it feeds, with addresses.
        also: Points that hang on it by their neutral alone, or are merely present.
        new_circuit: Address of the form of a circuit wired to it; None if it has one.
        chains: From each source to it.
        facts: What is recorded of it.
        unknowns: What the record does not say.
        help: What its kind is.
        board: Its board, with its address.
        files: Its photographs and papers.
        results: What was measured at it.
        edit: Address of its form.
        delete: Address where deleting is asked about.
        move: Address that moves it along its board.
    """

    title: str
    answer: str
    cautions: tuple[str, ...]
    missed: tuple[tuple[str, str, str], ...]
    by_room: tuple[tuple[str, tuple[tuple[str, str, str], ...]], ...]
    circuits: tuple[Link, ...]
    boards: tuple[Link, ...]
    also: tuple[tuple[str, str, str], ...]
    new_circuit: str | None
    chains: tuple[ChainView, ...]
    facts: Facts
    unknowns: tuple[str, ...]
    help: str
    board: Link | None
    files: FilesView
    results: ResultsView
    edit: str
    delete: str
    move: str


@bp.get("/<ref>/")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show what a device feeds, and what it is fed from."""
    net = supply(home)
    device = needed(net.record, Device, ref)
    return render_template("pages/devices/show.html", page=_page(net, device))


def _page(net: Network, device: Device) -> DevicePage:
    record, home = net.record, net.record.home.ref
    answer = ask_way(net, device)
    board = record.find(Board, device.board)
    kind = DEVICE_KINDS[device.kind]
    offer = kind.outgoing and not answer.circuits and not answer.boards
    new = url_for("items.new", home=home, plural="circuits", ways=device.ref)
    return DevicePage(
        title=device.title,
        answer=way_lede(net, answer),
        cautions=(
            *failed_before(answer.chains),
            *feed_back(answer.can_feed_back),
        ),
        missed=_missed(net, answer),
        by_room=_by_room(net, answer),
        circuits=_links(net, answer.circuits),
        boards=_links(net, answer.boards),
        also=_also(net, answer),
        new_circuit=new if offer else None,
        chains=chain_views(net.record, answer.chains),
        facts=facts_of(device, record, skip=("board", *fields_beside(device))),
        unknowns=answer.unknowns,
        help=KIND_HELP["device"][device.kind],
        board=(board.name, item_url(home, board)) if board else None,
        files=files_of(record, device),
        results=results_at(record, device),
        edit=edit_url(home, device),
        delete=delete_url(home, device),
        move=url_for("items.move", home=home, plural="devices", ref=device.ref),
    )


def _missed(net: Network, answer: WayAnswer) -> tuple[tuple[str, str, str], ...]:
    return tuple(
        (p.title, _url(net, p.ref), ", ".join(CARE[code] for code in p.care))
        for p in answer.care
    )


def _by_room(
    net: Network, answer: WayAnswer
) -> tuple[tuple[str, tuple[tuple[str, str, str], ...]], ...]:
    rooms: dict[str, list[tuple[str, str, str]]] = {}
    for point in answer.points:
        room = point.room.title if point.room else "No room recorded"
        entry = (point.title, _url(net, point.ref), _elsewhere(point))
        rooms.setdefault(room, []).append(entry)
    return tuple((room, tuple(points)) for room, points in rooms.items())


def _elsewhere(point: Feeding) -> str:
    """Say what of a point does not go off with the way."""
    kept = ["keeps another feed"] if point.other_feed else []
    neutral = (
        listed(n.title for n in point.neutral_elsewhere)
        if (point.neutral_elsewhere)
        else ""
    )
    kept += [f"its neutral returns by {neutral}"] if neutral else []
    return ", ".join(kept)


def _also(net: Network, answer: WayAnswer) -> tuple[tuple[str, str, str], ...]:
    neutral = [
        (
            n.title,
            _url(net, n.ref),
            "its neutral returns here, its line comes elsewhere",
        )
        for n in answer.neutral_only
    ]
    present = [
        (n.title, _url(net, n.ref), "its conductors are in that box too")
        for n in answer.present_at
    ]
    return (*neutral, *present)


def _links(net: Network, named: tuple[object, ...]) -> tuple[Link, ...]:
    refs = [(n.title, n.ref) for n in named]  # type: ignore[attr-defined]
    return tuple((title, _url(net, ref)) for title, ref in refs)


def _url(net: Network, ref: str) -> str:
    return item_url(net.record.home.ref, net.record.by_ref[ref])
