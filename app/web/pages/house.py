"""The house by circuit: rooms and points, one circuit or room brought forward."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from flask import Blueprint, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.network import Network, circuits_of, sources_of
from app.domain.record import Circuit, Point, Record, Room, Source
from app.drawing.line import tags_of
from app.drawing.render import render
from app.drawing.scene import Scene
from app.drawing.sheet import Band
from app.drawing.whole_house import house_bands
from app.services.drawings import checked_lit, house_file
from app.web.addresses import item_url
from app.web.ledes import counted
from app.web.papers import svg_answer
from app.web.session import opened, supply

bp = Blueprint("house", __name__, url_prefix="/homes/<home>/house")
Drawn = tuple[str, str]
Choices = tuple[tuple[str, tuple[tuple[str, str], ...]], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Storey:
    """A storey as it is drawn.

    Attributes:
        id: Name for the page.
        title: Its name.
        drawings: Its rooms: name for the page, and SVG.
    """

    id: str
    title: str
    drawings: tuple[Drawn, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Forward:
    """What is brought forward.

    Attributes:
        sentence: What it is, and how many points that are.
        label: What its page is called.
        url: Address of its page.
        rooms: Where it is drawn: room, and its name for the page.
    """

    sentence: str
    label: str
    url: str
    rooms: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class HousePage:
    """The house by circuit.

    Attributes:
        title: Heading.
        answer: How many points, and of how many it is not known what feeds them.
        storeys: The storeys in the order of the walk.
        key: Every circuit with its line, a drawing a board: as the rooms.
        choices: What may be brought forward: heading, then reference and title.
        lit: Reference of what is; empty for nothing.
        forward: The same in words, if anything is.
        file: Address of the drawing as a file.
    """

    title: str
    answer: str
    storeys: tuple[Storey, ...]
    key: tuple[Drawn, ...]
    choices: Choices
    lit: str
    forward: Forward | None
    file: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show the house, with what the address brings forward."""
    record = opened(home).record
    lit = checked_lit(record, request.args.get("lit", ""))
    net = supply(home)
    bands, key = house_bands(record, _forward_links(record), lit)
    page = HousePage(
        title="House by circuit",
        answer=_answer(net),
        storeys=tuple(
            Storey(
                id=f"storey-{band.code}",
                title=band.title,
                drawings=_drawn(band.blocks),
            )
            for band in bands
        ),
        key=_drawn(key),
        choices=_choices(record),
        lit=lit,
        forward=_forward(net, lit, bands),
        file=url_for(".file", home=home, lit=lit or None),
    )
    return render_template("pages/house.html", page=page)


@bp.get("/house.svg")
def file(home: str) -> ResponseReturnValue:
    """Give the house as a file."""
    record = opened(home).record
    lit = request.args.get("lit", "")
    return svg_answer(house_file(record, lit), f"{record.home.ref}-house")


def _forward_links(record: Record) -> Callable[[str], str | None]:
    """A touch on a room or a circuit brings it forward; a point leads to its page."""

    def link(ref: str) -> str | None:
        item = record.by_ref.get(ref)
        if isinstance(item, Circuit | Room | Source):
            return url_for(".index", home=record.home.ref, lit=ref, _anchor="drawn")
        return item_url(record.home.ref, item) if item else None

    return link


def _answer(net: Network) -> str:
    points = net.record.points
    open_ones = [p for p in points if not _fed(net, p)]
    rooms = counted(len(net.record.rooms), "room")
    start = f"{counted(len(points), 'point')} in {rooms}"
    if not open_ones:
        return f"{start}; by the record each is on a circuit or another feed."
    return f"{start}; what feeds them is not known for {len(open_ones)}."


def _fed(net: Network, point: Point) -> bool:
    return bool(circuits_of(net, point.ref) or sources_of(net, point.ref))


def _choices(record: Record) -> Choices:
    tags = tags_of(record)
    circuits = tuple((c.ref, f"{tags[c.ref]}: {c.title}") for c in record.circuits)
    rooms = tuple((room.ref, room.name) for room in record.rooms)
    groups = (("A circuit", circuits), ("A room", rooms))
    return tuple((heading, found) for heading, found in groups if found)


def _drawn(blocks: Iterable[Scene]) -> tuple[Drawn, ...]:
    return tuple((block.ident, render(block)) for block in blocks)


def _forward(net: Network, lit: str, bands: Iterable[Band]) -> Forward | None:
    item = net.record.by_ref.get(lit)
    if item is None:
        return None
    blocks = [block for band in bands for block in band.blocks]
    forward = {block: _points_lit(net.record, block) for block in blocks}
    points = counted(sum(forward.values()), "point")
    return Forward(
        sentence=f"Brought forward: {item.title}, {points or 'no points'}.",
        label=f"Open {item.title}",
        url=item_url(net.record.home.ref, item),
        rooms=tuple((b.title, b.ident) for b, many in forward.items() if many),
    )


def _points_lit(record: Record, block: Scene) -> int:
    things = (thing for thing in block.things() if thing.lit)
    return sum(record.find(Point, thing.ref) is not None for thing in things)
