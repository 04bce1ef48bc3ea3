"""Second feeds, and other sources that can feed back: where they join, in words."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Board, Circuit, Device, IntakeItem, Item, Record, Source
from app.domain.record.choices import SOURCE_KINDS
from app.drawing.supply import board_of


def source_title(item: Item) -> str:
    """Return an item's title; for a source without a name, what it is."""
    if isinstance(item, Source) and not item.name:
        return SOURCE_KINDS[item.kind]
    return item.title


def joins_said(record: Record, item: Item) -> Iterator[str]:
    """Say where a thing joins, and what else feeds it or is fed from it."""
    if isinstance(item, Source) and item.joins:
        yield f"can feed back through {named_with_board(record, item.joins)}"
    if isinstance(item, Source):
        tied = {t.point for t in record.ties if t.tied_to == item.ref}
        points = [p.title for p in record.points if p.ref in tied]
        if points:
            yield f"feeds {', '.join(points)}"
    yield from _seconds(record, item)
    for source in record.sources:
        if source.joins and _hangs_on(record, source.joins, item):
            yield f"{source_title(source)} can feed back into it"
    if isinstance(item, Board):
        yield from _second_feeds(record, item)


def _seconds(record: Record, item: Item) -> Iterator[str]:
    if isinstance(item, IntakeItem | Device) and item.second_feed:
        yield f"second feed: {named_with_board(record, item.second_feed)}"
    for other in record.fed_second_from(item.ref):
        yield f"also feeds {other.title}, as its second feed"


def _second_feeds(record: Record, board: Board) -> Iterator[str]:
    for device in record.devices_of(board.ref):
        if device.second_feed:
            name = named_with_board(record, device.second_feed)
            yield f"second feed of {device.title}: {name}"


def _hangs_on(record: Record, joins: str, item: Item) -> bool:
    if isinstance(item, Board):
        return board_of(record, joins) == item.ref
    return joins == item.ref


def named_with_board(record: Record, ref: str) -> str:
    """Return a thing's title, with the board that it is on."""
    item = record.by_ref.get(ref)
    if item is None:
        return f"{ref}, which is not in the record"
    board = record.find(Board, board_of(record, ref))
    on = isinstance(item, Circuit | Device) and board
    return (
        f"{source_title(item)} on {board.title}" if on and board else source_title(item)
    )
