"""Load: the demand, what carries it, and what more would do."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from app.domain.record import Record
from tests import builders as b
from tests.pages import CheckedClient

Keep = Callable[[Record], int]


def home_with(**home: object) -> Record:
    shower = b.circuit("C1", use="shower", connected_w=8500, name="Shower")
    rings = b.circuit("C2", use="sockets", arrangement="ring", name="Ring")
    board = b.board(
        "B1",
        b.main_switch(
            "MS",
            b.rcd("R1", b.way("W1", shower, rated_current_a=40)),
            b.rcd("R2", b.way("W2", rings), rated_current_a=80),
        ),
    )
    return b.home(b.street(board), **home)


def test_demand_is_shown_with_its_rows_and_its_fuse(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(home_with())
    page = visitor.see("/homes/H1/load/")
    assert "On paper, cautious: 69.0 A against a supply fuse of 100 A" in page.main
    assert "31.0 A to spare" in page.main
    assert "IET On-Site Guide" in page.main
    assert "Amendment 4 (2026) is in force" in page.main
    assert "dangerous" not in page.main.lower()


def test_each_phase_stands_against_its_fuse(visitor: CheckedClient, keep: Keep) -> None:
    charger = b.circuit("C1", use="vehicle", connected_w=22_000, name="Charger")
    shower = b.circuit("C2", use="shower", connected_w=9200, name="Shower")
    pump = b.circuit("C3", use="heat_pump", connected_w=2300, name="Pump")
    ways = (b.way("W1", charger, phase="all"), b.way("W2", shower, phase="l2"))
    switch = b.main_switch("MS", *ways, b.way("W3", pump))
    keep(b.home(b.street(b.board("B1", switch)), phases="three"))
    page = visitor.see("/homes/H1/load/?charger_kw=7.36")
    headings = [h.text for h in page.all("h3")]
    assert headings[-4:] == ["L1", "L2", "L3", "No one phase recorded"]
    said = page.main
    assert "Broken line: supply fuse, 100 A" in said
    assert "not known" not in said.split("How it builds up")[1].split("Tails")[0]
    assert "Phase: not recorded, so no line is drawn" in said
    assert "Demand with diversity on L2" in said
    assert "Together" not in said.split("How it builds up")[0]


def test_of_two_supply_fuses_neither_line_is_drawn(
    visitor: CheckedClient, keep: Keep
) -> None:
    shower = b.circuit("C1", use="shower", connected_w=8500, name="Shower")
    board = b.board("B1", b.main_switch("MS", b.way("W1", shower)))
    keep(b.home(b.street(board), b.cutout("CUT2")))
    said = visitor.see("/homes/H1/load/").main
    assert "Supply fuses: more than one, so no line is drawn" in said


def test_what_is_assumed_is_said(visitor: CheckedClient, keep: Keep) -> None:
    keep(home_with())
    said = visitor.see("/homes/H1/load/").main
    assert "Assumed. A socket circuit is taken as loaded" in said


def test_an_addition_stands_beside_today(visitor: CheckedClient, keep: Keep) -> None:
    keep(home_with(looped="yes"))
    said = visitor.see("/homes/H1/load/?shower_kw=9,5&charger_kw=7.4").main
    assert "With Electric shower, 9.5 kW, Vehicle charger, 7.4 kW" in said
    assert "Ask the network before anything is added: the supply is looped" in said
    assert "142.4 A" in said
    assert "42.4 A more" in said


def test_a_charger_that_is_held_back_adds_nothing(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(home_with())
    said = visitor.see("/homes/H1/load/?charger_kw=7.4&charger_managed=yes").main
    assert "Vehicle charger, 7.4 kW, held back" in said
    assert "69.0 A against a supply fuse" in said


@pytest.mark.parametrize("typed", ["lots", "-3", "51", "1e9"])
def test_a_load_that_is_none_is_refused_and_kept(
    visitor: CheckedClient, keep: Keep, typed: str
) -> None:
    keep(home_with())
    page = visitor.see(f"/homes/H1/load/?shower_kw={typed}", status=422)
    assert page.error("shower_kw")
    assert page.by_id["shower_kw"].get("value") == typed


def test_a_supply_fuse_not_known_gives_no_verdict(at_demo: CheckedClient) -> None:
    said = at_demo.see("/homes/demo/load/").main
    assert "Until then there is no verdict." in said
    assert "100 A, or" not in said
    assert "Not counted" in said


def test_the_question_of_two_rcds_is_answered(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(home_with())
    said = visitor.see("/homes/H1/load/").main
    assert "its RCDs are rated 63 A and 80 A. Why do they differ" in said
    assert "common practice, no source" in said
    assert "On paper it does not matter here" in said


def test_a_home_without_loads_says_so(visitor: CheckedClient, keep: Keep) -> None:
    keep(b.home(b.street()))
    said = visitor.see("/homes/H1/load/").main
    assert said.count("No load can be counted yet") == 1
    assert "0.0 A" not in said


@pytest.mark.parametrize(
    ("parts", "today"),
    [((), "none"), ((b.one_way(b.circuit("C1"), kind="rcbo"),), "nothing counted yet")],
)
def test_what_is_not_counted_is_no_demand_of_nought(
    visitor: CheckedClient, keep: Keep, parts: tuple[b.Part, ...], today: str
) -> None:
    keep(b.home(*parts))
    said = visitor.see("/homes/H1/load/?shower_kw=8.5").main
    assert f"Together {today}" in said
    assert "0.0 A" not in said.replace("37.0 A", "")


def test_a_way_without_a_circuit_is_said_with_its_link(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(b.home(b.one_way(label_found="Loft")))
    page = visitor.see("/homes/H1/load/")
    assert "no circuit is recorded on it, nor that it is spare" in page.main
    assert "to spare" not in page.main
