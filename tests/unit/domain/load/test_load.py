"""Demand and what it goes through: the test homes by hand, and the words."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from app.domain.load import (
    added_load,
    against_supply,
    demand,
    loads_of,
    rcd_loads,
    two_rcds,
    what_if,
)
from app.domain.network import network
from app.domain.record import Record
from app.errors import InvalidError
from tests.builders import (
    Part,
    board,
    circuit,
    cutout,
    home,
    light,
    main_switch,
    rcd,
    source,
    way,
)
from tests.unit.domain.test_houses import NAMES, expected_of, record_of

VERDICTS = {"ok": "ok", "not_shown_protected_from_overload": "not_shown"}


@pytest.mark.parametrize("name", NAMES)
def test_the_demand_of_a_test_home(name: str) -> None:
    net, expected = network(record_of(name)), expected_of(name)["c_max_demand"]
    found = demand(loads_of(net))
    low, high = expected["acceptable_range_A"]
    assert low <= found.low <= found.total <= found.high <= high
    assert round(float(found.total), 1) == expected["total_A"]
    assert {round(float(row.amps), 2) for row in found.rows} == {
        line["A"] for line in expected["lines"]
    }
    first = against_supply(net, found)[0]
    over = expected["verdict"] == "over_main_fuse_on_paper"
    assert first.verdict == ("over_on_paper" if over else "within")


@pytest.mark.parametrize("name", NAMES)
def test_the_rcds_of_a_test_home(name: str) -> None:
    expected = expected_of(name)["rcd_loading"]
    found = rcd_loads(network(record_of(name)))
    assert [
        (r.device.ref, r.rated, r.ways, r.before, round(float(r.demand.total), 1))
        for r in found
    ] == [
        (
            each["rcd"],
            each["rating_A"],
            each["sum_of_ways_A"],
            each["nearest_upstream_overcurrent_A"],
            each["diversified_A"],
        )
        for each in expected
    ]
    assert [r.verdict for r in found] == [VERDICTS[e["verdict"]] for e in expected]


def split(fuse: int | None, left: Any, right: Any, ways: tuple[int, int]) -> Record:
    """A board with two RCDs of some rating, each with two ways of 32 or 16 A."""

    def side(ref: str, rating: Any, amps: int) -> Part:
        inner = (
            way(f"{ref}{n}", circuit(f"C{ref}{n}", use="sockets"), rated_current_a=amps)
            for n in (1, 2)
        )
        return rcd(ref, *inner, rated_current_a=rating)

    return home(
        source(
            "GRID",
            cutout(
                "CUT",
                board(
                    "B1",
                    main_switch(
                        "MS", side("L", left, ways[0]), side("R", right, ways[1])
                    ),
                ),
                rated_current_a=fuse,
            ),
        ),
        looped="no",
    )


@pytest.mark.parametrize(
    ("fuse", "left", "right", "ways", "verdicts", "word"),
    [
        (100, 63, 80, (32, 32), ("not_shown", "ok"), "it may matter"),
        (60, 63, 80, (32, 32), ("ok", "ok"), "does not matter"),
        (100, 63, 80, (16, 16), ("ok", "ok"), "does not matter"),
        (80, 63, 80, (32, 32), ("not_shown", "ok"), "it may matter"),
        (None, 63, 80, (32, 32), ("find_out", "ok"), "cannot be told"),
        (None, 63, 80, (16, 16), ("ok", "ok"), "does not matter"),
        (100, None, 80, (16, 16), ("find_out", "ok"), "cannot be told"),
    ],
)
def test_why_two_rcds_differ_and_whether_it_matters(
    fuse: int | None,
    left: Any,
    right: Any,
    ways: tuple[int, int],
    verdicts: tuple[str, str],
    word: str,
) -> None:
    (found,) = two_rcds(network(split(fuse, left, right, ways)))
    assert tuple(each.verdict for each in found.rcds) == verdicts
    text = " ".join(found.sentences)
    assert word in text
    assert "common practice, no source" in text
    assert "maker's instructions" in text
    assert found.differ is (left is not None)


def test_a_supply_fuse_that_is_not_known_gets_no_verdict() -> None:
    net = network(split(None, 63, 80, (32, 32)))
    first = against_supply(net, demand(loads_of(net)))[0]
    assert (first.rated, first.verdict) == (None, "find_out")
    assert "find out" in first.sentence


def one_light(**fields: Any) -> Record:
    lamps = light("P1", count=5)
    lit = circuit("C1", lamps, use="lighting", **fields)
    return home(board("B1", way("W1", lit, rated_current_a=6)))


def test_lamps_of_which_no_load_is_recorded_are_assumed_and_said_to_be() -> None:
    (load,) = loads_of(network(one_light()))
    assert load.assumed
    assert "100 W assumed" in load.basis
    assert load.amps == Decimal(500) / 230
    (known,) = loads_of(network(one_light(connected_w=60)))
    assert not known.assumed


def test_a_load_that_is_not_known_is_left_out_and_named() -> None:
    record = home(
        board("B1", way("W1", circuit("C1", use="cooker"), rated_current_a=None))
    )
    found = demand(loads_of(network(record)))
    assert found.total == 0
    assert [load.circuit for load in found.left_out] == ["C1"]


@pytest.mark.parametrize(
    ("looped", "fuse", "words"),
    [
        ("yes", 100, "is looped to next door"),
        ("unknown", 100, "may be looped"),
        ("no", None, "Ask the network what fuse"),
        ("no", 60, "Ask the network before you buy"),
    ],
)
def test_one_load_more_says_whom_to_ask_first(
    looped: str, fuse: int | None, words: str
) -> None:
    record = split(fuse, 63, 80, (32, 32))
    record = record.having(home=record.home.model_copy(update={"looped": looped}))
    found = what_if(network(record), [added_load("charger=7.4")])
    assert words in " ".join(found.first)
    more = found.then.total - found.today.total
    assert round(more, 9) == round(Decimal(7400) / 230, 9)
    assert found.then_managed is not None
    assert found.then_managed.total == found.today.total


def test_a_shower_more_counts_by_its_row() -> None:
    found = what_if(network(split(100, 63, 80, (16, 16))), [added_load("shower=8.5")])
    more = found.then.total - found.today.total
    assert round(more, 9) == round(Decimal(8500) / 230, 9)
    assert found.then_managed is None
    assert not any("network in any case" in sentence for sentence in found.first)


@pytest.mark.parametrize("text", ["", "shower", "kettle=2", "shower=x", "shower=0"])
def test_a_load_that_is_none_is_refused(text: str) -> None:
    with pytest.raises(InvalidError, match="is no load"):
        added_load(text)


def test_nothing_is_called_dangerous() -> None:
    for name in NAMES:
        net = network(record_of(name))
        told = [each.sentence for each in against_supply(net, demand(loads_of(net)))]
        assert not any("danger" in sentence.lower() for sentence in told)
