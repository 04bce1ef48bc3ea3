"""RCDs that failed, by a button or by a paper: nobody counts on them any more.

The longest times at IΔn are those of BS EN 61008 and 61009 (from memory): 300 ms, and
500 ms where it is time-delayed.
"""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from app.domain.answers import PointAnswer
from app.domain.ask import ask_point, ask_room, ask_way
from app.domain.failed import failed_rcds
from app.domain.labels.chart import chart_of
from app.domain.network import network
from app.domain.pack.sections.first import section
from app.domain.record import Board, Device, Occasion, Point, Record, Result, Room
from app.domain.remarks import UNITS, sight
from app.domain.reminders import dues
from app.interchange.answer_text import answer_text
from tests import builders as b

TODAY = date(2026, 11, 25)
MARCH, MAY = date(2026, 3, 3), date(2026, 5, 3)
ON_MARCH = "its button failed on 3 March 2026"


def house(*others: b.Part, **of_rcd: Any) -> Record:
    """One point behind RCD "R", which stands alone before way "W1"."""
    hung = b.rcd("R", b.way("W1", b.circuit("C1", b.socket("P1", room="K"))), **of_rcd)
    return b.home(
        b.room("K", name="Kitchen"),
        *b.no_other_sources(),
        b.street(b.board("B1", b.main_switch("MS", hung))),
        *others,
    )


def pressed(outcome: str, day: date, about: str | None = "R") -> Occasion:
    ref = f"O{day:%j}{outcome}"
    return Occasion(
        ref=ref, kind="rcd_button", about=about, done_on=day, outcome=outcome
    )


def with_times(record: Record, *times: Occasion) -> Record:
    return record.having(occasions=times)


def with_papers(record: Record, *papers: dict[str, Any]) -> Record:
    results = (
        Result.model_validate({"ref": f"V{n}", **p}) for n, p in enumerate(papers)
    )
    return record.having(results=tuple(results))


def asked(record: Record) -> PointAnswer:
    point = record.find(Point, "P1")
    assert point
    return ask_point(network(record), point)


def said(record: Record) -> dict[str, str]:
    return {ref: f.says for ref, f in failed_rcds(network(record)).items()}


FAILED = with_times(house(), pressed("failed", MARCH))


def test_an_rcd_whose_button_failed_is_no_cover() -> None:
    assert asked(house()).within_30_ma == "yes"
    answer = asked(FAILED)
    assert answer.within_30_ma == "failed"
    assert [(rcd.ref, rcd.failed) for rcd in answer.rcds] == [("R", ON_MARCH)]
    doubt = f"Whether RCD R (R) still guards anybody is not known: {ON_MARCH}."
    assert doubt in answer.unknowns


def test_another_one_before_it_is_cover_all_the_same() -> None:
    hung = b.rcd("R", b.rcbo("W1", b.circuit("C1", b.socket("P1"))))
    record = with_times(b.home(b.street(b.board("B1", hung))), pressed("failed", MARCH))
    assert asked(record).within_30_ma == "yes"
    assert any(ON_MARCH in sentence for sentence in asked(record).unknowns)


def test_on_two_feeds_the_worse_one_counts() -> None:
    two = (b.way("W2", b.circuit("C2")), b.rcbo("W3", b.circuit("C3")))
    both = house(b.street(b.board("B2", *two)), b.tie("P1", "C3"))
    assert asked(with_times(both, pressed("failed", MARCH))).within_30_ma == "failed"
    bare = house(b.street(b.board("B2", *two)), b.tie("P1", "C2"))
    assert asked(with_times(bare, pressed("failed", MARCH))).within_30_ma == "some"


@pytest.mark.parametrize(
    ("day", "failed"), [(date(2026, 3, 2), True), (MARCH, True), (MAY, False)]
)
def test_only_a_later_day_on_which_it_worked_outdoes_it(
    day: date, failed: bool
) -> None:
    record = with_times(house(), pressed("failed", MARCH), pressed("worked", day))
    assert bool(said(record)) is failed
    paper = {"about": "C1", "rcd_button": "failed", "tested_on": MARCH}
    of_paper = with_papers(with_times(house(), pressed("worked", day)), paper)
    assert bool(said(of_paper)) is failed


def test_what_was_pressed_is_outdone_by_no_paper() -> None:
    fine = {"about": "R", "rcd_button": "worked", "tested_on": MAY}
    assert said(with_papers(FAILED, fine)) == {"R": ON_MARCH}


@pytest.mark.parametrize(
    ("about", "says"),
    [
        ("R", "its button failed, by a paper of 3 March 2026"),
        ("C1", "a button before Circuit C1 failed, by a paper of 3 March 2026"),
        ("W1", "a button before Circuit-breaker W1 failed, by a paper of 3 March 2026"),
        ("B1", "a button of A board failed, by a paper of 3 March 2026"),
    ],
)
def test_a_paper_tells_of_every_rcd_that_it_may_mean(about: str, says: str) -> None:
    paper = {"about": about, "rcd_button": "failed", "tested_on": MARCH}
    assert said(with_papers(house(), paper)) == {"R": says}


def test_a_paper_without_a_day_stands_whatever_came_after() -> None:
    record = house(button_pressed_on=MAY)
    told = with_papers(record, {"about": "R", "rcd_button": "failed"})
    assert said(told) == {"R": "its button failed, by a paper without a day"}


def test_a_button_somewhere_in_the_home_may_be_any() -> None:
    record = with_times(
        house(b.board("B2", b.rcd("S", button_pressed_on=MAY))),
        pressed("failed", MARCH, None),
    )
    assert list(said(record)) == ["R"]


@pytest.mark.parametrize(
    ("ms", "of_rcd", "failed"),
    [
        (300, {}, False),
        (301, {}, True),
        (301, {"time_delayed": "yes"}, False),
        (501, {"time_delayed": "yes"}, True),
    ],
)
def test_one_that_was_measured_too_slow_is_no_cover(
    ms: int, of_rcd: dict[str, Any], failed: bool
) -> None:
    paper = {"about": "C1", "rcd_ms": Decimal(ms), "tested_on": MARCH}
    says = {"R": f"it took {ms} ms, too long, by a paper of 3 March 2026"}
    assert said(with_papers(house(**of_rcd), paper)) == (says if failed else {})
    faster = {"about": "R", "rcd_ms": Decimal(28), "tested_on": MAY}
    assert said(with_papers(house(**of_rcd), paper, faster)) == {}


def test_the_text_of_the_answer_says_so() -> None:
    text = answer_text(asked(FAILED))
    assert f"by the record yes, but {ON_MARCH}: count on no RCD" in text
    assert f"type not known; {ON_MARCH})" in text


def test_the_way_and_the_room_name_it() -> None:
    net = network(FAILED)
    way, room = FAILED.find(Device, "W1"), FAILED.find(Room, "K")
    assert way
    assert room
    for answer in (ask_way(net, way), ask_room(net, room)):
        assert any(ON_MARCH in sentence for sentence in answer.unknowns)


def test_the_chart_marks_it_at_each_way() -> None:
    board = FAILED.find(Board, "B1")
    assert board
    rows = {row.label.ref: row for row in chart_of(network(FAILED), board).rows}
    assert rows["W1"].rcd == "RCD (button failed)"
    assert rows["R"].exceptions == (f"{ON_MARCH}: do not count on it",)


def test_the_pack_names_it_among_what_is_not_known() -> None:
    assert ON_MARCH in repr(section(network(FAILED), ()))
    assert ON_MARCH not in repr(section(network(house()), ()))


def test_a_reminder_tells_of_a_paper_without_a_day() -> None:
    paper = {"about": "C1", "rcd_button": "failed"}
    record = with_papers(house(button_pressed_on=MAY), paper)
    (due,) = [d for d in dues(record, TODAY) if d.key == "rcd_button.R"]
    assert (due.state, due.failed_on) == ("now", None)
    assert due.says.startswith(
        "A button before Circuit C1 failed, by a paper without a day."
    )
    assert "give it its day" in due.says


def test_a_time_is_no_matter_of_the_button() -> None:
    record = with_papers(
        house(), {"about": "R", "rcd_ms": Decimal(400), "tested_on": MARCH}
    )
    (due,) = [d for d in dues(record, TODAY) if d.key == "rcd_button.R"]
    assert (due.state, due.says) == ("no_day", "No day is known.")


def test_no_day_is_asked_for_of_one_that_failed() -> None:
    look = UNITS["test-button-due"].look
    assert list(look(sight(house(), TODAY)))
    assert list(look(sight(FAILED, TODAY))) == []
