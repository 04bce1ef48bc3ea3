"""Street to board: every intake item in order, whose it is, and the earthing."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.chain import when_of
from app.domain.kinds import DEVICE_KINDS
from app.domain.record import (
    Board,
    Device,
    IntakeItem,
    Item,
    Record,
    Source,
)
from app.domain.record.choices import ENCLOSURES, OWNERS, SOURCE_KINDS
from app.domain.unknowns import unanswered_sources
from app.drawing.earthing import earthing_outline, other_items
from app.drawing.ink import STRONG
from app.drawing.joins import joins_said, source_title
from app.drawing.outline import Outline, lay_out
from app.drawing.phrase import (
    device_rating,
    hours,
    joined,
    rating_of,
    residual,
    seen_of,
)
from app.drawing.render import render
from app.drawing.row import MARGIN, SHEET, Fact, Row, plain_words
from app.drawing.scene import Box, Frame, Linker, Part, Scene, Text, Thing
from app.drawing.supply import Supply, board_of, feeds_into, supply_of
from app.drawing.symbols import symbol_of


def draw_street(
    record: Record,
    link: Linker,
    lit: frozenset[str] = frozenset(),
    *,
    id_prefix: str = "street",
) -> str:
    """Return the drawing of a home's intake, from the street to its boards, as SVG.

    Args:
        record: The home.
        link: Address of the page of a reference, or None.
        lit: References to bring forward.
        id_prefix: Begins the ids in the drawing.
    """
    return render(street_scene(record, link, lit, id_prefix=id_prefix))


def street_scene(
    record: Record,
    link: Linker,
    lit: frozenset[str] = frozenset(),
    *,
    id_prefix: str = "street",
) -> Scene:
    """Return what `draw_street` draws, before it is SVG."""
    supply = supply_of(record)
    outline = _outline(record, supply, link, lit)
    parts, y = lay_out(outline, MARGIN)
    for text, known in sources_said(record, supply):
        said, foot = plain_words(text, MARGIN + 8, y + 18, most=6)
        box = Box(MARGIN, y + 12, SHEET - 2 * MARGIN, foot - y - 8)
        frame = [] if known else [Frame(box=box, dashed=True, corner=2)]
        parts += [*frame, *said]
        y = box.bottom
    for heading, more in (
        ("Earthing", earthing_outline(record, link, lit)),
        ("Also there", other_items(record, link, lit)),
    ):
        if more.roots:
            parts.append(_heading(heading, y))
            below, y = lay_out(more, y + 38)
            parts += below
    return Scene(
        ident=id_prefix,
        title=f"From the street to the boards: {record.home.name}",
        description=_description(parts),
        width=SHEET,
        height=y + MARGIN,
        parts=tuple(parts),
    )


def _heading(text: str, y: float) -> Text:
    return Text(x=MARGIN, y=y + 34, text=text, size=STRONG, bold=True)


def _description(parts: list[Part | Thing]) -> str:
    said = [part.title for part in parts if isinstance(part, Thing)]
    return "In order: " + "; ".join(said) if said else "Nothing is recorded yet."


def _outline(
    record: Record, supply: Supply, link: Linker, lit: frozenset[str]
) -> Outline:
    refs = [*supply.roots, *(ref for fed in supply.fed.values() for ref in fed)]
    rows = {ref: _row(record, record.by_ref[ref], supply, link, lit) for ref in refs}
    return Outline(
        roots=supply.roots,
        rows=rows,
        fed=supply.fed,
        begins=supply.begins,
        owners=OWNERS,
    )


def _row(
    record: Record, item: Item, supply: Supply, link: Linker, lit: frozenset[str]
) -> Row:
    owner, facts, known = said_of(record, item)
    through = supply.through.get(item.ref)
    more = [f"by way of {through}"] if through else []
    facts = [joined([OWNERS[owner], *facts[:1]]), *more, *facts[1:]]
    when = hours(when_of(item))
    return Row(
        ref=item.ref,
        symbol=symbol_of(item.sort, getattr(item, "kind", None)),
        title=source_title(item),
        facts=(
            *(Fact(text) for text in (*facts, *joins_said(record, item)) if text),
            *([Fact(when, framed=True)] if when else []),
        ),
        owner=owner,
        dashed=not known,
        lit=item.ref in lit,
        href=link(item.ref),
    )


def said_of(record: Record, item: Item) -> tuple[str, list[str], bool]:
    """Return an item's owner, what is said of it, and whether all of it is known."""
    if isinstance(item, IntakeItem):
        rating, known = rating_of(item)
        return item.owner, [rating, seen_of(item)], known
    if isinstance(item, Source):
        asked = item.present == "unknown"
        said = "whether there is one: not known" if asked else ""
        loose = _joins_nowhere(record, item)
        where = "where it joins: not recorded" if loose else ""
        return item.owner, [said, where], not asked and not loose
    if isinstance(item, Board):
        return item.owner, _board_said(record, item), item.enclosure != "unknown"
    if isinstance(item, Device):
        board = record.find(Board, item.board)
        known = bool(item.rated_current_a)
        where = f"on {board.title}" if board else "on a board that is not recorded"
        kind = DEVICE_KINDS[item.kind].label
        owner = board.owner if board else "unknown"
        return owner, [joined([kind, device_rating(item)]), where], known
    return "unknown", [], False


def _joins_nowhere(record: Record, source: Source) -> bool:
    fed = (*record.intake, *record.boards, *record.devices)
    feeding = any(source.ref in feeds_into(i) for i in fed)
    tied = any(source.ref == tie.tied_to for tie in record.ties)
    return not source.joins and not feeding and not tied


def _board_said(record: Record, board: Board) -> list[str]:
    known = board.enclosure != "unknown"
    case = ENCLOSURES[board.enclosure].lower() if known else "enclosure not known"
    first = [
        d
        for d in record.devices_of(board.ref)
        if not d.fed_from or board_of(record, d.fed_from) != board.ref
    ]
    return [case, _incomer(first)]


def _incomer(first: list[Device]) -> str:
    if len(first) != 1:
        return f"{len(first)} devices fed straight from here" if first else ""
    device = first[0]
    kind = DEVICE_KINDS[device.kind]
    bits = [device_rating(device)] if "rated_current_a" in kind.fields else []
    if "earth_leakage" in kind.protects:
        bits.append(residual(device))
    return joined([f"first in it: {kind.label}", *bits])


def sources_said(record: Record, supply: Supply) -> Iterator[tuple[str, bool]]:
    """Say which other sources there are not, and which nobody has answered for."""
    no = [s for s in record.sources if s.present == "no" and s.ref not in supply.roots]
    if no:
        names = ", ".join(source_title(source).lower() for source in no)
        yield f"Answered no: {names}.", True
    asked = {s.kind for s in record.sources if s.present == "unknown"}
    kinds = [kind for kind in unanswered_sources(record) if kind not in asked]
    if kinds:
        names = ", ".join(SOURCE_KINDS[kind].lower() for kind in kinds)
        yield f"Not answered whether these can feed the home: {names}.", False
