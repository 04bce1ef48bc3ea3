"""One-line diagram: from the service cable to every circuit, one drawing a board."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from app.domain.kinds import DEVICE_KINDS
from app.domain.network import network
from app.domain.record import Board, Circuit, Device, Record, Room
from app.drawing.face import words_of
from app.drawing.ink import SMALL, STRONG, wrapped
from app.drawing.joins import joins_said, named_with_board
from app.drawing.one_line_out import Diagram, circuit_out, outs_of
from app.drawing.one_line_supply import boxed, described, refs_shown, supply_scene
from app.drawing.phrase import device_rating, hours, joined, quantity, residual
from app.drawing.scene import Box, Linker, Part, Scene, Text, Thing
from app.drawing.sheet import Band, one_sheet
from app.drawing.split import in_parts
from app.drawing.supply import NOT_RECORDED, open_circles
from app.drawing.symbols import symbol_of
from app.drawing.tree import WIDTH, Node, Out, Tree, draw_tree

TITLE = "One-line diagram"
SAID = (
    "By the record: read or seen from outside, nothing tested. "
    "Broken lines and frames: not known."
)
_EDGE = 8.0


def one_line_blocks(record: Record, link: Linker) -> tuple[Scene, ...]:
    """Return the supply, each board, and the circuits that start from no way.

    Args:
        record: The home.
        link: Address of the page of a reference, or None.
    """
    diagram = Diagram.of(network(record), link)
    boards = [s for board in record.boards for s in _board_scenes(diagram, board)]
    return (supply_scene(diagram), *boards, *_loose(diagram))


def one_line_scene(record: Record, link: Linker) -> Scene:
    """Return the whole diagram on one sheet; arguments as for `one_line_blocks`."""
    blocks = one_line_blocks(record, link)
    title = "From the street to the circuits"
    return one_sheet(
        [Band(code="all", title=title, blocks=blocks)],
        ident="one-line",
        title=f"{TITLE}: {record.home.name}",
        said=SAID,
    )


def _board_scenes(diagram: Diagram, board: Board) -> Iterator[Scene]:
    """Draw a board; one that is taller than a page, in parts."""
    trees = in_parts(_tree(diagram, board))
    for at, tree in enumerate(trees):
        heading = _heading(diagram, board, part=at + 1 if at else 0)
        parts, y = draw_tree(tree, heading.box.bottom)
        last = at + 1 == len(trees)
        for text, known in _said_below(diagram, board) if last else ():
            more, y = boxed(text, y, known=known)
            parts += more
        yield Scene(
            ident=f"line-{board.ref}-{at + 1}" if at else f"line-{board.ref}",
            title=f"{board.title}, part {at + 1}" if at else board.title,
            description=described(parts),
            width=WIDTH,
            height=y + 8,
            parts=(heading, *parts),
        )


def _heading(diagram: Diagram, board: Board, part: int) -> Thing:
    """Draw a board's name; its second part and those after it are numbered."""
    record = diagram.net.record
    room = record.find(Room, board.room)
    where = f"In {room.title}" if room else "Where it is: not recorded"
    title = f"{board.title}, part {part}" if part else board.title
    texts: list[Text] = []
    y = 4.0
    for said, size in ((title, STRONG), *([] if part else [(where, SMALL)])):
        for text in _wrapped(said, size):
            y += size + 4
            whole = said if text.endswith("…") else None
            bold = size == STRONG
            texts.append(
                Text(x=_EDGE, y=y, text=text, whole=whole, size=size, bold=bold)
            )
    return Thing(
        ref=board.ref,
        title=title if part else f"{title}. {where}",
        box=Box(_EDGE - 4, 2, WIDTH - 2 * _EDGE + 8, y + 4),
        parts=tuple(texts),
        href=diagram.link(board.ref),
    )


def _wrapped(text: str, size: float) -> tuple[str, ...]:
    return wrapped(text, WIDTH - 2 * _EDGE, size, most=2, bold=size == STRONG)


def _tree(diagram: Diagram, board: Board) -> Tree:
    """Return a board's devices as they feed one another, below what feeds them."""
    shown = {d.ref: d for d in _shown(diagram.net.record, board)}
    above = {
        ref: d.fed_from if d.fed_from in shown else None for ref, d in shown.items()
    }
    circling = dict(above)
    open_circles(above)
    fed: dict[str, tuple[str, ...]] = {}
    for ref, over in above.items():
        if over:
            fed[over] = (*fed.get(over, ()), ref)
    feeds = {
        ref: _CIRCLE if circling[ref] else shown[ref].fed_from or board.fed_from or ""
        for ref, over in above.items()
        if not over
    }
    nodes = {ref: _node(diagram, device) for ref, device in shown.items()}
    return _with_incomers(diagram, board, feeds, nodes, fed)


_CIRCLE = "\N{CLOCKWISE OPEN CIRCLE ARROW}"
"""Stands for the feed of a device at which a circle of feeds was opened."""


def _with_incomers(
    diagram: Diagram,
    board: Board,
    feeds: Mapping[str, str],
    nodes: dict[str, Node],
    fed: dict[str, tuple[str, ...]],
) -> Tree:
    """Put devices with one feed in common below a node that stands for it."""
    record = diagram.net.record
    begins: dict[str, tuple[str, bool]] = {}
    roots: list[str] = []
    for number, feed in enumerate(dict.fromkeys(feeds.values())):
        below = tuple(ref for ref, by in feeds.items() if by == feed)
        said, known = _begin(record, feed)
        if len(below) == 1:
            begins[below[0]] = (said, known)
            roots += below
            continue
        ref = f"{board.ref} feed {number + 1}"
        fed[ref] = below
        nodes[ref] = Node(
            ref=ref,
            symbol=symbol_of("circuit", None),
            title=said,
            facts=(f"{len(below)} devices straight from here",),
            dashed=not known,
        )
        roots.append(ref)
    return Tree(roots=roots, nodes=nodes, fed=fed, begins=begins)


def _begin(record: Record, feed: str) -> tuple[str, bool]:
    if feed == _CIRCLE:
        return "The record runs in a circle here", False
    if not feed:
        return NOT_RECORDED, False
    return f"Fed from {named_with_board(record, feed)}", feed in record.by_ref


def _shown(record: Record, board: Board) -> Iterator[Device]:
    """Leave out blanks that nothing hangs on: they are no part of any feed."""
    feeding = {ref for d in record.devices for ref in (d.fed_from, d.second_feed)}
    for device in record.devices_of(board.ref):
        blank = device.kind == "blank" and device.ref not in feeding
        if not blank or record.circuits_of(device.ref):
            yield device


def _node(diagram: Diagram, device: Device) -> Node:
    record = diagram.net.record
    missing = list(_missing(device))
    label = f"“{words_of(device)}”" if words_of(device) else ""
    kind = DEVICE_KINDS[device.kind].label if device.way else ""
    facts = (
        joined([kind, label]),
        joined(_more(device)),
        f"not known: {', '.join(missing)}" if missing else "",
        *joins_said(record, device),
        hours(device.when),
    )
    return Node(
        ref=device.ref,
        symbol=symbol_of("device", device.kind),
        title=_title(device),
        facts=tuple(fact for fact in facts if fact),
        dashed=bool(missing),
        outs=outs_of(diagram, device.ref),
        href=diagram.link(device.ref),
    )


def _title(device: Device) -> str:
    kind = DEVICE_KINDS[device.kind]
    name = f"Way\xa0{device.way}" if device.way else kind.label
    rated = "rated_current_a" in kind.fields or device.rated_current_a
    rating = device_rating(device).replace(" ", "\xa0") if rated else ""
    is_rcd = "earth_leakage" in kind.protects or device.residual_current_ma
    return joined([name, rating, residual(device) if is_rcd else ""])


def _more(device: Device) -> Iterator[str]:
    if device.time_delayed == "yes":
        yield "time-delayed"
    if device.breaking_capacity_ka:
        yield quantity(device.breaking_capacity_ka, "kA")
    if device.phase != "unknown":
        yield device.phase.upper() if device.phase != "all" else "all three phases"


def _missing(device: Device) -> Iterator[str]:
    kind = DEVICE_KINDS[device.kind]
    if "rated_current_a" in kind.fields and not device.rated_current_a:
        yield "rating"
    if "curve" in kind.fields and device.curve == "unknown":
        yield "tripping type"
    if "earth_leakage" in kind.protects and not device.residual_current_ma:
        yield "IΔn"
    if "earth_leakage" in kind.protects and device.rcd_type == "unknown":
        yield "RCD type"


def _said_below(diagram: Diagram, board: Board) -> Iterator[tuple[str, bool]]:
    devices = diagram.net.record.devices_of(board.ref)
    if not devices:
        yield "No devices are recorded on this board.", False
    blanks = len(devices) - len([*_shown(diagram.net.record, board)])
    if blanks:
        yield f"Left out: {blanks} blank{'s' if blanks > 1 else ''}.", True


def _loose(diagram: Diagram) -> Iterator[Scene]:
    """Draw the circuits of which no way is drawn."""
    record = diagram.net.record
    on_boards = {d.ref for board in record.boards for d in record.devices_of(board.ref)}
    drawn = on_boards | refs_shown(record)
    loose = [c for c in record.circuits if not drawn & set(c.ways)]
    if not loose:
        return
    parts: list[Part | Thing] = []
    title, y = "Circuits on no way", 30.0
    node = Node(
        ref="no way",
        symbol=symbol_of("", None),
        title="Their way is not recorded",
        dashed=True,
        outs=tuple(_unwired(diagram, circuit) for circuit in loose),
    )
    tree = Tree(roots=("no way",), nodes={"no way": node}, fed={}, begins={})
    parts, y = draw_tree(tree, y)
    heading = Text(x=_EDGE, y=22, text=title, size=STRONG, bold=True)
    yield Scene(
        ident="line-no-way",
        title=title,
        description=described(parts),
        width=WIDTH,
        height=y + 8,
        parts=(heading, *parts),
    )


def _unwired(diagram: Diagram, circuit: Circuit) -> Out:
    return replace(circuit_out(diagram, circuit), known=False)
