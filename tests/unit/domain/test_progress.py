"""How far a record has come, in sentences that hold for none, some and all."""

from __future__ import annotations

import pytest

from app.domain.faults import faults
from app.domain.progress import progress
from app.domain.record import Record, Room, Tie
from tests import builders as b

FED = "; what feeds a point is recorded for"


def said(record: Record) -> str:
    rooms = (Room(ref="R1", name="Hall"),)
    record = record.having(rooms=rooms)
    return progress(record, faults(record)).known.partition(" written down")[2]


def graded(record: Record, grade: str) -> Record:
    ties = (Tie.model_validate({**t.model_dump(), "grade": grade}) for t in record.ties)
    return record.having(ties=tuple(ties))


def of_two(tied: int) -> Record:
    on, loose = ["P1", "P2"][:tied], ["P1", "P2"][tied:]
    circuit = b.circuit("C1", *map(b.socket, on))
    return b.home(b.one_way(circuit), *map(b.socket, loose))


@pytest.mark.parametrize(
    ("record", "words"),
    [
        (b.home(), "."),
        (of_two(0), f"{FED} none of them."),
        (
            graded(of_two(1), "2"),
            f"{FED} 1 of them, and seen or in a document for none.",
        ),
        (
            graded(of_two(2), "3"),
            f"{FED} all of them, and seen or in a document for 2.",
        ),
    ],
)
def test_what_feeds_points_is_counted(record: Record, words: str) -> None:
    assert said(record) == words
