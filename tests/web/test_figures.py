"""The figures of a circuit, and the reference tables."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from app.domain.circuits import circuit_figures
from app.domain.load import load_answer
from app.domain.network import network
from app.domain.record import Circuit, Record
from app.domain.tables import TABLES
from tests import builders as b
from tests.pages import CheckedClient, text_of

Keep = Callable[[Record], int]


def cooker(**fields: object) -> Record:
    known = {
        "use": "shower",
        "connected_w": 7200,
        "cable": "twin_and_earth",
        "arrangement": "radial",
        "line_mm2": 6,
        "cpc_mm2": 2.5,
        "method": "C",
        "length_m": 15,
    }
    way = b.way("W1", b.circuit("C1", name="Shower", **known | fields))
    board = b.board("B1", b.main_switch("MS", way), earthing="supply")
    return b.home(b.street(board), earthing="tn_c_s")


def test_each_figure_stands_with_its_working(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(cooker())
    said = visitor.see("/homes/H1/circuits/C1/figures/").main
    assert "Voltage drop, all at the far end = " not in said
    assert "mV × I × length / 1000" in said
    assert "From a table: BS 7671:2018+A2:2022 Table 4D5" in said
    assert "From your record: Shower (C1)" in said
    assert "calculated from your record" in said.lower()


def test_what_is_missing_leads_to_its_form(visitor: CheckedClient, keep: Keep) -> None:
    keep(cooker(length_m=None))
    page = visitor.see("/homes/H1/circuits/C1/figures/")
    assert "Cannot tell: needs the length." in page.main
    assert page.links["Write down the length"] == "/homes/H1/circuits/C1/edit"


def test_an_assumed_figure_is_said_outside_the_working(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(cooker())
    page = visitor.see("/homes/H1/circuits/C1/figures/")
    folded = " ".join(text_of(part) for part in page.all("details"))
    said = [text_of(li) for li in page.all("li") if "Assumed." in text_of(li)]
    assert any("Ze is not recorded: 0.35 Ω" in each for each in said)
    assert not any(each in folded for each in said)


def test_the_circuit_leads_to_its_figures(at_demo: CheckedClient) -> None:
    page = at_demo.see("/homes/demo/circuits/C9/")
    assert at_demo.see(page.links["Figures"]).h1 == "Figures of Downstairs ring"


def test_no_circuit_no_figures(here: CheckedClient) -> None:
    assert here.see("/homes/H1/circuits/NO/figures/", status=404).h1


@pytest.mark.parametrize("slug", sorted(TABLES))
def test_each_table_is_shown_in_full_with_its_basis(
    visitor: CheckedClient, slug: str
) -> None:
    page = visitor.see(f"/help/tables/{slug}")
    table = TABLES[slug]
    assert table.source in page.main
    assert "Amendment 4 (2026) is in force" in page.main
    assert len(page.all("tr")) == len(table.rows) + 1
    assert ("from memory" in page.main) >= table.from_memory


def test_the_list_of_tables_names_them_all(visitor: CheckedClient) -> None:
    links = visitor.see("/help/tables/").links
    assert {table.title for table in TABLES.values()} <= set(links)
    assert visitor.see("/help/tables/none", status=404).h1


def assumptions_in(record: Record, ref: str) -> list[tuple[str, tuple[str, ...]]]:
    circuit = record.find(Circuit, ref)
    assert circuit is not None
    parts = circuit_figures(network(record), circuit).parts
    return [(part.code, part.assumes) for part in parts]


@pytest.mark.parametrize("name", ["h01", "h02", "h05", "h06", "h07", "h10"])
def test_a_figure_from_something_assumed_always_says_so(
    visitor: CheckedClient, keep: Keep, houses: dict[str, Record], name: str
) -> None:
    """Beside the figure itself: in its section, and not folded away."""
    record = houses[name]
    keep(record)
    told = 0
    for circuit in record.circuits:
        page = visitor.see(f"/homes/{name}/circuits/{circuit.ref}/figures/")
        sections = {s.find("h2").get("id"): s for s in page.all("section")}
        for code, assumes in assumptions_in(record, circuit.ref):
            folded = {id(e) for d in sections[code].iter("details") for e in d.iter()}
            shown = [
                text_of(li) for li in sections[code].iter("li") if id(li) not in folded
            ]
            for said in assumes:
                assert f"Assumed. {said}" in shown, (circuit.ref, code)
                told += 1
    assert told > 10


def test_a_load_from_something_assumed_always_says_so(
    visitor: CheckedClient, keep: Keep, houses: dict[str, Record]
) -> None:
    for name, record in houses.items():
        keep(record)
        page = visitor.see(f"/homes/{name}/load/")
        shown = [text_of(li) for li in page.all("li")]
        answer = load_answer(network(record))
        assert answer.demand.assumes
        rated = [each.rated for each in answer.against if each.rated]
        for said in (*answer.demand.assumes, *(a for f in rated for a in f.assumes)):
            assert f"Assumed. {said}" in shown
