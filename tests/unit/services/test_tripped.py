"""The sheet “If it trips” as it comes out: one page, legible, nothing lost unsaid."""

from __future__ import annotations

import re
from datetime import date

import pytest

from app.domain.network import network
from app.domain.record import Home, Record
from app.domain.tripped import if_it_trips
from app.services.tripped import sheet_pdf
from tests import builders as b
from tests.house.test_words import NEVER
from tests.unit.report.pdf import assert_accessible, opened, text_of

DAY = date(2026, 3, 5)
FLOOR_PT = 8.0
HOUSES = ["h01", "h02", "h05", "h06", "h07", "h10", "demo"]


def of_ways(boards: int, ways: int, points: int) -> Record:
    rooms = [b.room(f"R{n}", name=f"Room {n}", kind="bedroom") for n in range(points)]
    made = [
        b.board(
            f"B{k}",
            b.rcd(
                f"R{k}-1",
                *(
                    b.way(
                        f"W{k}-{n}",
                        b.circuit(
                            f"C{k}-{n}",
                            *(
                                b.socket(
                                    f"P{k}-{n}-{p}",
                                    room=f"R{p}",
                                    name=f"Socket {p} by the long window",
                                )
                                for p in range(points)
                            ),
                            name=f"Sockets of part {n}",
                        ),
                        way=str(n),
                    )
                    for n in range(ways)
                ),
            ),
            name=f"Board {k}",
        )
        for k in range(boards)
    ]
    return b.home(*rooms, b.street(*made))


@pytest.mark.parametrize("name", HOUSES)
def test_a_house_has_one_page_with_everything_on_it(
    houses: dict[str, Record], demo: Record, name: str
) -> None:
    record = {**houses, "demo": demo}[name]
    net = network(record)
    made = sheet_pdf(net, DAY)
    assert_accessible(made, f"If it trips, {record.home.name}")
    with opened(made) as document:
        (page,) = document.pages
        sizes = [char["size"] for char in page.chars]
        assert max(char["bottom"] for char in page.chars) <= page.height
    small = [size for size in sizes if size < FLOOR_PT]
    assert len(small) < 150, "only the foot of the page is smaller"
    text = " ".join(text_of(made).split())
    assert "left off here" not in text
    for board in if_it_trips(net).boards:
        assert board.name in text
        for row in board.rows:
            assert row.name.partition(",")[0] in text
    for words in ("STOP", "Smoke or fire", "with every way off", "Electrician:"):
        assert words in text


def test_three_boards_of_forty_ways_stay_on_one_page() -> None:
    made = sheet_pdf(network(of_ways(3, 13, 5)), DAY)
    with opened(made) as document:
        assert len(document.pages) == 1
        assert min(c["size"] for c in document.pages[0].chars) >= 7.4
    text = " ".join(text_of(made).split())
    assert "Sockets of part 12" in text


def test_what_has_no_room_is_counted_and_said_where_it_is() -> None:
    made = sheet_pdf(network(of_ways(3, 13, 30)), DAY)
    with opened(made) as document:
        assert len(document.pages) == 1
    text = " ".join(text_of(made).split())
    found = re.search(r"(\d+) points are left off here for want of room", text)
    assert found is not None
    more = [int(n) for n in re.findall(r"(\d+) more", text)]
    assert sum(more) == int(found[1]) > 500


def test_without_a_record_it_is_a_page_of_guidance() -> None:
    made = sheet_pdf(network(Record(home=Home(ref="e", name="Nothing yet"))), DAY)
    assert_accessible(made, "If it trips, Nothing yet")
    assert "No board is recorded yet" in text_of(made)


def test_no_sheet_says_what_is_never_said(demo: Record) -> None:
    text = " ".join(text_of(sheet_pdf(network(demo), DAY)).split())
    words = r"\bdead\b|compliant|certified|passed|satisfactory"
    for pattern in (*NEVER.values(), words):
        assert not re.search(pattern, text, re.IGNORECASE)


def test_the_same_day_gives_the_same_sheet(demo: Record) -> None:
    net = network(demo)
    assert sheet_pdf(net, DAY) == sheet_pdf(net, DAY)
