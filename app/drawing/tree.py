"""A tree of feeds: a busbar down from what feeds several things, a branch to each.

A thing that feeds just one other has it straight below, in its own lane.  One that
feeds several has them a lane further in.  Where the sheet has no lane left, what is
further down begins anew at the edge, and says from where it goes on: so no line ever
lies on another.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from app.drawing.ink import DASHES, FINE, HEAVY, LINE, PLAIN, SMALL, wrapped
from app.drawing.line import TAG, drawn_tag, tag_width
from app.drawing.scene import Box, Frame, Part, Stroke, Symbol, Text, Thing

WIDTH = 360.0
_EDGE, _SYMBOL, _FIRST, _STEP, _MOST = 8.0, 32.0, 26.0, 32.0, 3
_BELOW, _LEADING = 10.0, 16.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Out:
    """What goes out from a row: a circuit, with its cable.

    Attributes:
        tag: Its tag; empty where nothing is recorded, or where it is spare.
        title: Its name, or what is said in its place.
        facts: Lines below the name: the cable, the board that it feeds.
        known: Whether the size of its cable is recorded.
        href: Address of its page, or None.
    """

    ref: str = ""
    tag: str = ""
    title: str
    facts: tuple[str, ...] = ()
    known: bool = True
    href: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Node:
    """A thing of the tree.

    Attributes:
        symbol: SVG elements in a box of 24 by 24; empty for words alone.
        title: Heading, with its rating.
        facts: Lines below it.
        dashed: Whether something that should be printed on it is not known.
        outs: The circuits that go out from it.
        href: Address of its page, or None.
    """

    ref: str
    symbol: str
    title: str
    facts: tuple[str, ...] = ()
    dashed: bool = False
    outs: tuple[Out, ...] = ()
    href: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Tree:
    """Nodes by reference, and which feeds which; each is fed once at most.

    Attributes:
        begins: For a root, what feeds it: in words, and whether that is known.
    """

    roots: Sequence[str]
    nodes: Mapping[str, Node]
    fed: Mapping[str, Sequence[str]]
    begins: Mapping[str, tuple[str, bool]]


@dataclass(frozen=True, slots=True)
class _Placed:
    lane: int
    top: float


@dataclass(slots=True)
class _Sheet:
    tree: Tree
    y: float
    parts: list[Part | Thing] = field(default_factory=list)
    lines: list[Part | Thing] = field(default_factory=list)
    placed: dict[str, _Placed] = field(default_factory=dict)


def draw_tree(tree: Tree, y: float) -> tuple[list[Part | Thing], float]:
    """Return a tree's parts from y downwards, lines first, and where it ends."""
    sheet = _Sheet(tree, y)
    roots = [(ref, tree.begins.get(ref)) for ref in tree.roots]
    while roots:
        root, begins = roots.pop(0)
        further = _draw_root(sheet, root, begins)
        roots[:0] = [(ref, (f"Goes on from {name}", True)) for ref, name in further]
    return [*sheet.lines, *sheet.parts], sheet.y


def lane_x(lane: int) -> float:
    """Return where the line of a lane runs."""
    return _FIRST + lane * _STEP


def _words_x(lane: int) -> float:
    return lane_x(lane) + _SYMBOL / 2 + 10


def _draw_root(
    sheet: _Sheet, root: str, begins: tuple[str, bool] | None
) -> list[tuple[str, str]]:
    """Draw what hangs on a root; return what there was no lane for, and its feeder."""
    if begins:
        _draw_beginning(sheet, *begins)
    further: list[tuple[str, str]] = []
    waiting = [(root, 0, "")]
    while waiting:
        ref, lane, feeder = waiting.pop()
        if lane > _MOST:
            further.append((ref, sheet.tree.nodes[feeder].title))
            continue
        _draw_node(sheet, sheet.tree.nodes[ref], lane)
        if feeder:
            sheet.lines.append(_branch(sheet, ref, feeder))
        fed = sheet.tree.fed.get(ref, ())
        onward = lane if len(fed) == 1 and not sheet.tree.nodes[ref].outs else lane + 1
        waiting += reversed([(each, onward, ref) for each in fed])
    sheet.y += 8
    return further


def _draw_beginning(sheet: _Sheet, said: str, known: bool) -> None:  # noqa: FBT001
    x, top = lane_x(0), sheet.y
    for line in wrapped(said, WIDTH - _EDGE - x - 14, SMALL, most=3):
        sheet.y += _LEADING
        whole = said if line.endswith("…") else None
        sheet.parts.append(
            Text(x=x + 14, y=sheet.y - 3, text=line, whole=whole, size=SMALL)
        )
    sheet.y += 4
    places = ((x, top), (x, sheet.y + _BELOW))
    dashes = None if known else DASHES
    sheet.lines.append(Stroke(places=places, weight=HEAVY, dashes=dashes))


def _branch(sheet: _Sheet, ref: str, feeder: str) -> Stroke:
    """Draw the line to a thing, down from what feeds it and then in to its frame."""
    here, above = sheet.placed[ref], sheet.placed[feeder]
    x, start = lane_x(above.lane), above.top + _SYMBOL
    middle = here.top + _SYMBOL / 2
    if here.lane == above.lane:
        return Stroke(places=((x, start), (x, here.top)), weight=HEAVY)
    left = lane_x(here.lane) - _SYMBOL / 2
    return Stroke(places=((x, start), (x, middle), (left, middle)), weight=HEAVY)


def _draw_node(sheet: _Sheet, node: Node, lane: int) -> None:
    sheet.y += _BELOW
    top, x = sheet.y, _words_x(lane)
    left = lane_x(lane) - _SYMBOL / 2
    texts = [*_words(node.title, x, top, PLAIN, bold=True, most=2)]
    for fact in node.facts:
        texts += _words(fact, x, _after(texts, top), SMALL, most=3)
    foot = max(top + _SYMBOL, _after(texts, top))
    frame = Frame(box=Box(left, top, _SYMBOL, _SYMBOL), dashed=node.dashed, corner=2)
    sheet.parts.append(
        Thing(
            ref=node.ref,
            title=". ".join([node.title, *node.facts]),
            box=Box(left, top, WIDTH - _EDGE - left, foot - top),
            parts=(frame, Symbol(x=left + 4, y=top + 4, drawn=node.symbol), *texts),
            href=node.href,
        )
    )
    sheet.placed[node.ref] = _Placed(lane, top)
    sheet.y = foot
    for out in node.outs:
        _draw_out(sheet, out, lane, top + _SYMBOL)


def _draw_out(sheet: _Sheet, out: Out, lane: int, start: float) -> None:
    """Draw what goes out: its cable as a line, its tag, its name and its facts."""
    x, top = _words_x(lane), sheet.y + 4
    middle = top + TAG / 2
    dashes = None if out.known else DASHES
    places = ((lane_x(lane), start), (lane_x(lane), middle), (x - 1, middle))
    sheet.lines.append(Stroke(places=places, weight=LINE, dashes=dashes))
    tag = drawn_tag(out.tag, x, top) if out.tag else ()
    left = x + tag_width(out.tag) + 6 if out.tag else x + 6
    texts = [*_words(out.title, left, top + 2, PLAIN, most=2)]
    for fact in out.facts:
        texts += _words(fact, left, _after(texts, top), SMALL, most=3)
    foot = max(top + TAG, _after(texts, top))
    sheet.y = foot
    if not out.ref:
        box = Box(x, top, WIDTH - _EDGE - x, foot - top)
        frame = [] if out.known else [Frame(box=box, weight=FINE, dashed=True)]
        sheet.parts += [*frame, *texts]
        return
    sheet.parts.append(
        Thing(
            ref=out.ref,
            title=". ".join([f"{out.tag}: {out.title}", *out.facts]),
            box=Box(x, top, WIDTH - _EDGE - x, foot - top),
            parts=(*tag, *texts),
            href=out.href,
        )
    )


def _after(texts: Sequence[Text], top: float) -> float:
    """Return where the next line of words begins."""
    return texts[-1].y + 4 if texts else top


def _words(
    text: str, x: float, y: float, size: float, *, most: int, bold: bool = False
) -> Iterator[Text]:
    """Lay out words from y downwards to the sheet's edge."""
    room = WIDTH - _EDGE - 4 - x
    kept = text.replace(" · ", "\xa0· ")  # a dot ends a line, and never begins one
    for at, line in enumerate(wrapped(kept, room, size, most=most, bold=bold)):
        yield Text(
            x=x,
            y=y + size + at * (size + 3),
            text=line,
            whole=text if line.endswith("…") else None,
            size=size,
            bold=bold,
        )
