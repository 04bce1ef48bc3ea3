"""What a plan for switching off is asked for, of what a work touches."""

from __future__ import annotations

from app.domain.record import Work
from app.domain.works import plan_for
from tests.builders import circuit, home, light, one_way


def test_each_thing_is_planned_for_or_left_out_with_the_reason() -> None:
    about = ("W1", "MS", "P1", "MET", "GRID", "B1", "C1")
    work = Work(ref="J1", name="All of it", about=about)
    record = home(one_way(circuit("C1", light("P1")))).having(works=(work,))
    plan = plan_for(record, work)
    assert plan.refs == ("B1", "P1", "C1")
    titles = [record.by_ref[ref].title for ref in ("W1", "MS", "MET", "GRID")]
    assert [[title in said for title in titles] for said in plan.says] == [
        [True, True, False, False],
        [False, False, True, False],
        [False, False, False, True],
    ]


def test_a_plan_that_takes_everything_says_nothing() -> None:
    work = Work(ref="J1", name="A light", about=("P1",))
    record = home(one_way(light("P1"))).having(works=(work,))
    assert (plan_for(record, work).refs, plan_for(record, work).says) == (("P1",), ())
