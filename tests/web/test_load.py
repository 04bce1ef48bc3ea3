"""The load, the figures of a circuit, the reference tables: pages and commands."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from app.cli import main
from app.domain.tables import TABLES
from tests.pages import CheckedClient

HOME = "/homes/demo"


def test_the_load_of_the_demo_home(at_demo: CheckedClient) -> None:
    page = at_demo.see(f"{HOME}/load/")
    assert "On paper, cautious" in page.main
    assert "Its rating is not known: find out" in page.main
    assert "Amendment 4 (2026) is in force" in page.main
    assert "supply fuse" not in page.main.split("Each row")[0].lower().split("ask")[0]


def test_one_load_more_stands_beside_today(at_demo: CheckedClient) -> None:
    page = at_demo.see(f"{HOME}/load/?kind=charger&kw=7.4")
    assert "With charger 7.4 kW" in page.main
    assert "Ask the network" in page.main
    assert "gives way to the rest" in page.main


@pytest.mark.parametrize("kilowatts", ["", "much", "-3", "9999", "0"])
def test_a_power_that_is_none_is_said_beside_the_box(
    at_demo: CheckedClient, kilowatts: str
) -> None:
    page = at_demo.see(f"{HOME}/load/?kind=shower&kw={kilowatts}", 422)
    assert page.errors == ["Enter the power in kilowatts, such as 8.5."]
    assert page.error("kw") == page.errors[0]
    [box] = [e for e in page.all("input") if e.get("name") == "kw"]
    assert box.get("value") == kilowatts


def test_an_assumed_load_is_said_to_be(here: CheckedClient) -> None:
    here.save("/homes/H1/circuits/C2/edit", use="lighting")
    assert "assumed" in here.see("/homes/H1/load/").main


def test_the_figures_of_a_circuit(here: CheckedClient) -> None:
    fields = {"cable": "twin_and_earth", "line_mm2": "2.5", "method": "C"}
    here.save("/homes/H1/circuits/C1/edit", {**fields, "arrangement": "ring"})
    page = here.see(
        here.see("/homes/H1/circuits/C1/").links["Figures worked out from it"]
    )
    assert "Does the ring keep its rule? Yes: 27.0 A (assumed: Ca, Cg, Ci)" in page.main
    assert "Cannot tell: needs the length of the cable" in page.main
    assert "measurement goes before" in page.main


def test_a_circuit_that_is_not_there(here: CheckedClient) -> None:
    here.see("/homes/H1/circuits/C9/figures", 404)


def test_every_table_is_shown_in_full_with_its_basis(visitor: CheckedClient) -> None:
    links = visitor.see("/tables/").links
    for table in TABLES.values():
        page = visitor.see(links[table.title])
        assert table.standard in page.main
        for row, basis in zip(table.rows, table.basis, strict=True):
            assert basis in page.main
            assert all((cell or "left open") in page.main for cell in row)
    visitor.see("/tables/none", 404)


@pytest.fixture
def data(tmp_path: Path) -> Path:
    assert CliRunner().invoke(main, ["demo", "--data", str(tmp_path)]).exit_code == 0
    return tmp_path


def ways(data: Path, *arguments: str) -> str:
    result = CliRunner().invoke(main, [*arguments, "--data", str(data)])
    assert result.exit_code == 0, result.output
    return result.output


def test_the_command_gives_the_load(data: Path) -> None:
    found = json.loads(ways(data, "load", "--add", "shower=8.5", "--json"))
    assert found["then"]["total_a"] > found["today"]["total_a"]
    assert found["against_today"][0]["verdict"] == "find_out"
    assert all(row["source"] for row in found["today"]["rows"])
    text = ways(data, "load", "--add", "charger=7.4")
    assert "With what is thought of" in text
    assert "Calculated from your record" in text


def test_the_command_refuses_a_load_that_is_none(data: Path) -> None:
    result = CliRunner().invoke(main, ["load", "--add", "x=1", "--data", str(data)])
    assert result.exit_code == 1
    assert "is no load" in result.output


def test_the_command_gives_the_figures_of_a_circuit(data: Path) -> None:
    found = json.loads(ways(data, "circuit", "C1", "--json"))
    assert len(found["checks"]) == 4
    assert all(c["holds"] is not None or c["needs"] for c in found["checks"])
    assert "Cannot tell: needs" in ways(data, "circuit", "C1")
