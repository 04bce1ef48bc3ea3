"""Work puts a doubt on what was seen before it, and on nothing else."""

from __future__ import annotations

from datetime import date

import pytest

from app.domain.aging import aged_ties
from app.domain.labels import confirmed
from app.domain.network import network
from app.domain.record import Device, Record, Work
from app.domain.remarks import remarks
from tests.builders import board, circuit, home, main_switch, room, socket, street, way
from tests.builders import tie as tied

SEEN = date(2024, 5, 1)
TODAY = date(2026, 11, 25)


def house() -> Record:
    return home(
        room("R1"),
        street(
            board(
                "B1",
                main_switch(
                    "MS",
                    way("W1", circuit("C1", socket("P1", room="R1"))),
                    way("W2", circuit("C2", socket("P2"))),
                ),
            )
        ),
        socket("P3"),
        tied("P3", "P1"),
    )


def with_work(*about: str, **fields: object) -> Record:
    record = house()
    ties = tuple(
        tie.model_copy(update={"seen_on": SEEN, "grade": "4"}) for tie in record.ties
    )
    values = {"state": "done", "done_on": date(2025, 1, 1), **fields}
    work = Work.model_validate({"ref": "WK", "name": "x", "about": about, **values})
    return record.having(ties=ties, works=(work,))


def aged_points(record: Record) -> list[str]:
    aged = aged_ties(record)
    return [tie.point for tie in record.ties if tie.ref in aged]


@pytest.mark.parametrize(
    ("about", "points"),
    [
        (("C1",), ["P1", "P3"]),
        (("W1",), ["P1", "P3"]),
        (("B1",), ["P1", "P2", "P3"]),
        (("R1",), ["P1", "P3"]),
        (("P3",), ["P3"]),
        (("P1",), ["P1", "P3"]),
        (("C2",), ["P2"]),
        ((), []),
    ],
)
def test_work_touches_what_hangs_on_it(
    about: tuple[str, ...], points: list[str]
) -> None:
    assert aged_points(with_work(*about)) == points


@pytest.mark.parametrize(
    "fields",
    [{"state": "planned"}, {"state": "given_up"}, {"done_on": date(2024, 5, 1)}],
    ids=str,
)
def test_work_not_done_or_not_later_leaves_it_be(fields: dict[str, object]) -> None:
    assert aged_points(with_work("B1", **fields)) == []


def test_work_without_a_day_may_be_later() -> None:
    assert aged_points(with_work("C2", done_on=None)) == ["P2"]


def test_what_is_seen_after_work_without_a_day_is_newer() -> None:
    before = with_work("C2", done_on=None, done_before=date(2024, 5, 2))
    assert aged_points(before) == ["P2"]
    after = with_work("C2", done_on=None, done_before=SEEN)
    assert aged_points(after) == []


def test_work_that_says_nowhere_is_asked_where_it_was() -> None:
    record = with_work()
    (asked,) = [r for r in remarks(record, TODAY) if r.about[0] == "WK"]
    assert "where it was done" in asked.sentence
    assert asked.outcome != "remark"
    told = with_work("C2")
    assert not [r for r in remarks(told, TODAY) if r.about[0] == "WK"]
    older = with_work(done_on=date(2024, 1, 1))
    assert not [r for r in remarks(older, TODAY) if r.about[0] == "WK"]


def test_a_tie_without_a_day_may_be_older() -> None:
    record = with_work("C2")
    ties = tuple(tie.model_copy(update={"seen_on": None}) for tie in record.ties)
    assert aged_points(record.having(ties=ties)) == ["P2"]


def test_what_nobody_knew_is_not_put_in_doubt() -> None:
    record = with_work("C2")
    ties = tuple(tie.model_copy(update={"grade": "0"}) for tie in record.ties)
    assert aged_points(record.having(ties=ties)) == []


def test_a_label_is_confirmed_until_work_is_done_on_its_way() -> None:
    before, after = with_work("C1", state="planned"), with_work("C1")
    way_1 = before.find(Device, "W1")
    assert way_1 is not None
    assert confirmed(network(before), way_1)
    assert not confirmed(network(after), way_1)
