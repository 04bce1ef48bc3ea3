"""A record is the same after JSON, whatever its fields hold."""

from __future__ import annotations

from hypothesis import given, settings

from app.domain.record import Record
from tests.property.strategies import any_records, raw_homes


@settings(max_examples=100)
@given(any_records)
def test_json_and_back_is_the_same(record: Record) -> None:
    text = record.model_dump_json()
    again = Record.model_validate_json(text)
    assert again == record
    assert again.model_dump_json() == text


@given(raw_homes)
def test_every_item_is_found_in_its_group(record: Record) -> None:
    for board in {device.board for device in record.devices}:
        expected = tuple(d for d in record.devices if d.board == board)
        assert record.devices_of(board) == expected
    for room in {point.room for point in record.points}:
        assert record.points_of(room) == tuple(
            p for p in record.points if p.room == room
        )
    for point in {tie.point for tie in record.ties}:
        assert record.ties_of(point) == tuple(
            t for t in record.ties if t.point == point
        )
