"""``ways circuit`` and ``ways load``: figures as text and as JSON."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from app.cli import main
from app.domain.circuits import circuit_figures
from app.domain.load import addition, load_answer
from app.domain.network import network
from app.domain.pack.blocks import Table
from app.domain.pack.sections.load import section
from app.domain.record import Record
from app.interchange import to_document
from app.interchange.figures_text import circuit_text, load_text
from tests import builders as b
from tests.json_schema import errors


@pytest.fixture
def data(tmp_path: Path, demo: Record) -> Path:
    file = tmp_path / "home.json"
    file.write_text(to_document(demo), encoding="utf-8")
    assert ways("import", str(file), data=tmp_path).exit_code == 0
    return tmp_path


def ways(*arguments: str, data: Path) -> Result:
    return CliRunner().invoke(main, [*arguments, "--data", str(data)])


def answered(*arguments: str, data: Path) -> Any:
    result = ways(*arguments, "--json", data=data)
    assert result.exit_code == 0, result.output
    value = json.loads(result.output)
    shape = CliRunner().invoke(main, ["schema", "--answer", arguments[0]]).output
    assert errors(value, json.loads(shape)) == []
    return value


def test_figures_of_a_circuit(data: Path) -> None:
    found = answered("circuit", "C9", data=data)
    parts = {part["code"]: part for part in found["parts"]}
    assert parts["ring"]["sign"] == "within"
    assert parts["zs"]["found"]["outcome"] == "cannot_tell"
    text = ways("circuit", "c9", data=data).output
    assert "Rule for a ring final: within" in text
    assert (
        "Cannot tell: needs Ze, the earthing arrangement, the earthing of what" in text
    )
    assert "Amendment 4 (2026) is in force" in text
    assert "(from a table: BS 7671:2018+A2:2022 Table 4D5" in text


def test_load_with_something_more(data: Path) -> None:
    found = answered("load", "--add", "shower=9.2", "--add", "charger=7", data=data)
    assert [a["kind"] for a in found["what_if"]["additions"]] == ["shower", "charger"]
    assert found["what_if"]["then"]["amps"] > found["demand"]["amps"]
    text = ways("load", "--add", "shower=9.2", data=data).output
    assert "On paper, cautious: at least" in text
    assert "Until then there is no verdict." in text
    assert "What to do first" in text


@pytest.mark.parametrize("added", ["kettle=3", "shower=lots"])
def test_what_cannot_be_added_is_refused(data: Path, added: str) -> None:
    result = ways("load", "--add", added, data=data)
    assert result.exit_code == 1
    assert "Error:" in result.output


def test_no_such_circuit(data: Path) -> None:
    assert ways("circuit", "B1", data=data).exit_code == 1


def test_of_three_phases_each_is_told_by_itself() -> None:
    charger = b.circuit("C1", use="vehicle", connected_w=22_000)
    pump = b.circuit("C2", use="heat_pump", connected_w=2300)
    switch = b.main_switch("MS", b.way("W1", charger, phase="all"), b.way("W2", pump))
    net = network(b.home(b.street(b.board("B1", switch)), phases="three"))
    said = load_text(load_answer(net, [addition("charger=2.3")]))
    for phase in ("L1", "L2", "L3"):
        assert said.count(f"{phase}: on paper, cautious: 31.9 A with diversity") == 2
    assert "No one phase recorded: on paper, cautious: 10.0 A with diversity" in said
    assert "No one phase recorded: on paper, cautious: 20.0 A with diversity" in said
    tables = [block for block in section(net).blocks if isinstance(block, Table)]
    assert [table.caption for table in tables] == [
        "By group, L1", "By group, L2", "By group, L3",
        "By group, no one phase recorded",
    ]  # fmt: skip


def test_every_assumption_stands_in_the_text(
    houses: dict[str, Record], demo: Record
) -> None:
    told = 0
    for record in (*houses.values(), demo):
        net = network(record)
        whole = load_answer(net)
        text = load_text(whole)
        for said in whole.demand.assumes:
            assert f"Assumed: {said}" in text
            told += 1
        for circuit in record.circuits:
            answer = circuit_figures(net, circuit)
            text = circuit_text(answer)
            for part in answer.parts:
                for said in part.assumes:
                    assert f"Assumed: {said}" in text
                    told += 1
    assert told > 100
