"""The head of the one-line diagram: sources, intake items and boards, the earthing."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Board, Device, Home, IntakeItem, Item, Record
from app.domain.record.choices import BASES, EARTHINGS, OWNERS, PHASES
from app.drawing.ink import SMALL, STRONG, wrapped
from app.drawing.joins import joins_said, source_title
from app.drawing.one_line_out import Diagram, circuits_out
from app.drawing.phrase import hours, joined, quantity
from app.drawing.scene import Box, Frame, Part, Scene, Text, Thing
from app.drawing.street import said_of, sources_said
from app.drawing.supply import Supply, supply_of
from app.drawing.symbols import symbol_of
from app.drawing.tree import WIDTH, Node, Tree, draw_tree

_EDGE = 8.0


def supply_scene(diagram: Diagram) -> Scene:
    """Return the drawing of the supply, down to the boards."""
    record = diagram.net.record
    supply = supply_of(record)
    heading = Text(x=_EDGE, y=22, text="The supply", size=STRONG, bold=True)
    parts, y = draw_tree(_tree(diagram, supply), 26.0)
    for text, known in (*_facts(record.home), *sources_said(record, supply)):
        more, y = boxed(text, y, known=known)
        parts += more
    return Scene(
        ident="line-supply",
        title="The supply",
        description=described(parts),
        width=WIDTH,
        height=y + 8,
        parts=(heading, *parts),
    )


def refs_shown(record: Record) -> frozenset[str]:
    """Return the references of what the supply's drawing shows."""
    return frozenset(_refs(supply_of(record)))


def described(parts: list[Part | Thing]) -> str:
    """Say in order what is drawn."""
    said = [part.title for part in parts if isinstance(part, Thing)]
    return "In order: " + "; ".join(said) if said else "Nothing is recorded yet."


def boxed(text: str, y: float, *, known: bool) -> tuple[list[Part], float]:
    """Write a sentence across the sheet; in a broken frame if it is not known."""
    top, parts = y + 6, list[Part]()
    y = top + 2
    for line in wrapped(text, WIDTH - 4 * _EDGE, SMALL, most=6):
        y += SMALL + 3
        whole = text if line.endswith("…") else None
        parts.append(Text(x=2 * _EDGE, y=y, text=line, whole=whole, size=SMALL))
    y += 6
    box = Box(_EDGE, top, WIDTH - 2 * _EDGE, y - top)
    return [*([] if known else [Frame(box=box, dashed=True, corner=2)]), *parts], y


def _tree(diagram: Diagram, supply: Supply) -> Tree:
    return Tree(
        roots=supply.roots,
        nodes={ref: _node(diagram, supply, ref) for ref in _refs(supply)},
        fed=supply.fed,
        begins={ref: (said, False) for ref, said in supply.begins.items()},
    )


def _refs(supply: Supply) -> Iterator[str]:
    yield from supply.roots
    for fed in supply.fed.values():
        yield from fed


def _node(diagram: Diagram, supply: Supply, ref: str) -> Node:
    record = diagram.net.record
    item = record.by_ref[ref]
    _, _, known = said_of(record, item)
    through = supply.through.get(ref)
    facts = (
        *_said(record, item),
        f"by way of {through}" if through else "",
        hours(getattr(item, "when", "always")),
    )
    return Node(
        ref=ref,
        symbol=symbol_of(item.sort, getattr(item, "kind", None)),
        title=source_title(item),
        facts=tuple(fact for fact in facts if fact),
        dashed=not known,
        outs=() if _has_board(record, item) else circuits_out(diagram, ref),
        href=diagram.link(ref),
    )


def _has_board(record: Record, item: Item) -> bool:
    """A device of a board is drawn there with its circuits; here it only leads on."""
    return isinstance(item, Device) and record.find(Board, item.board) is not None


def _said(record: Record, item: Item) -> Iterator[str]:
    """Say whose a thing is and how big; a board says the rest in its own drawing."""
    owner, facts, _ = said_of(record, item)
    if isinstance(item, Board):
        yield joined([OWNERS[owner], "drawn on its own"])
        return
    yield joined([OWNERS[owner], *facts[:1]])
    if not isinstance(item, IntakeItem):
        yield from facts[1:]
    yield from joins_said(record, item)


def _facts(home: Home) -> Iterator[tuple[str, bool]]:
    known = home.earthing != "unknown"
    basis = BASES[home.earthing_basis].lower()
    how = f"how that is known: {basis}"
    words = joined([EARTHINGS[home.earthing], how]) if known else "not known"
    yield f"Earthing: {words}", known and home.earthing_basis != "unknown"
    phases = home.phases != "unknown"
    yield f"Phases: {PHASES[home.phases].lower()}", phases
    for name, value, unit in (
        ("External loop impedance, Ze", home.ze_ohm, "Ω"),
        ("Prospective fault current", home.fault_current_ka, "kA"),
    ):
        figure = quantity(value, unit) if value else "not known"
        yield f"{name}: {figure}", bool(value)
