"""Results as papers write them, what is asked about them, and how they are kept."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.domain.record import Board, Record, Result
from app.domain.results import (
    COLUMNS,
    Sheet,
    copied,
    latest,
    questions,
    read,
    results_of,
    sheet_of,
)
from app.domain.results.sheet import shown, values_of
from tests.builders import board, circuit, home, main_switch, socket, street, way


@pytest.mark.parametrize(
    ("text", "unit", "value", "sign"),
    [
        ("0.35", "Ω", "0.35", "exact"),
        ("0,35", "Ω", "0.35", "exact"),
        (".35", "Ω", "0.35", "exact"),
        ("350 mΩ", "Ω", "0.35", "exact"),
        ("0.35 Ω", "Ω", "0.35", "exact"),
        ("0.35 \u2126", "Ω", "0.35", "exact"),
        ("0.35ohm", "Ω", "0.35", "exact"),
        ("1.2k", "Ω", "1200", "exact"),
        ("1.2 kΩ", "Ω", "1200", "exact"),
        (">200", "MΩ", "200", "over"),
        ("+299", "MΩ", "299", "over"),
        (">= 500 MΩ", "MΩ", "500", "over"),
        ("<0.1", "MΩ", "0.1", "under"),
        ("500 kΩ", "MΩ", "0.5", "exact"),
        ("1 GΩ", "MΩ", "1000", "exact"),
        ("24.5 ms", "ms", "24.5", "exact"),
        ("0.2 s", "ms", "200", "exact"),
        ("1.6kA", "kA", "1.6", "exact"),
        ("1600 A", "kA", "1.6", "exact"),
    ],
)
def test_a_value_is_read_as_it_is_written(
    text: str, unit: str, value: str, sign: str
) -> None:
    found = read(text, unit)
    assert (found.value, found.sign) == (Decimal(value), sign)


@pytest.mark.parametrize("text", ["", " ", "-", "–", "N/A", "LIM", "n.a.", "N/V"])
@pytest.mark.parametrize("unit", ["Ω", "MΩ", "ms", "kA"])
def test_nothing_measured(text: str, unit: str) -> None:
    assert read(text, unit).value is None


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("ok", "Ω"), ("0.35 V", "Ω"), ("5 MΩ", "Ω"), ("1.2.3", "Ω"), ("-3", "Ω"),
        ("0.3 0.4", "Ω"), ("٣", "Ω"), ("1e3", "Ω"), ("20 kA", "ms"),
    ],
)  # fmt: skip
def test_what_is_no_value_is_refused_with_what_to_enter(text: str, unit: str) -> None:
    with pytest.raises(ValueError, match=f"Enter a number in {unit}"):
        read(text, unit)


def house(earthing: str = "tn_s") -> Record:
    ways = (
        way("W1", circuit("C1", socket("P1"), name="Ring", number="1"), way="1"),
        way("W2", circuit("C2", socket("P2"), name="Lights"), way="2"),
    )
    return home(street(board("B1", main_switch("MS", *ways))), earthing=earthing)


def sheet(record: Record, paper: str | None = "Q1") -> Sheet:
    found = record.find(Board, "B1")
    assert found is not None
    return sheet_of(record, found, paper)


def asked(typed: Mapping[str, str], earthing: str = "tn_s", at: int = 1) -> list[str]:
    row = sheet(house()).rows[at]
    return [q.column for q in questions(row, values_of(row, typed), earthing)]


@pytest.mark.parametrize(
    ("typed", "columns"),
    [
        ({"r1_r2_ohm": "1.2k"}, ["r1_r2_ohm"]),
        ({"r1_r2_ohm": "350"}, ["r1_r2_ohm"]),
        ({"r1_ohm": "410", "rn_ohm": "0.41"}, ["r1_ohm", "rn_ohm"]),
        ({"zs_ohm": "0.3", "r1_r2_ohm": "0.5"}, ["zs_ohm"]),
        ({"zs_ohm": "650"}, ["zs_ohm"]),
        ({"live_earth_mohm": "0.5"}, ["live_earth_mohm"]),
        ({"live_live_mohm": "0.2"}, ["live_live_mohm"]),
        ({"rcd_ms": "0.2"}, ["rcd_ms"]),
        ({"rcd_ms": "310"}, ["rcd_ms"]),
        ({"r1_ohm": "0.4", "r2_ohm": "0.2"}, ["r2_ohm"]),
        # What a usual sheet says is not asked about.
        (
            {
                "r1_ohm": "0.41", "rn_ohm": "0.42", "r2_ohm": "0.68",
                "r1_r2_ohm": "0.27", "live_live_mohm": ">200",
                "live_earth_mohm": ">200", "zs_ohm": "0.62", "rcd_ms": "24",
            },
            [],
        ),
        ({}, []),
    ],
)  # fmt: skip
def test_a_slip_is_asked_about(typed: dict[str, str], columns: list[str]) -> None:
    assert asked(typed) == columns


def test_with_an_earth_rod_many_ohms_are_usual() -> None:
    assert asked({"zs_ohm": "90"}, "tt") == []
    assert asked({"zs_ohm": "90"}, "unknown") == []
    assert asked({"ze_ohm": "80"}, "tn_s", at=0) == ["ze_ohm"]
    assert asked({"ze_ohm": "80"}, "tt", at=0) == []
    assert asked({"fault_current_ka": "160"}, at=0) == ["fault_current_ka"]


def test_the_rows_are_the_board_and_its_circuits_by_their_ways() -> None:
    rows = sheet(house()).rows
    assert [(r.ref, r.of, r.title) for r in rows] == [
        ("B1", "board", "A board"),
        ("C1", "circuit", "1 Ring"),
        ("C2", "circuit", "Lights"),
    ]


def put(record: Record, ref: str, paper: str | None, **typed: str) -> Record:
    now = sheet(record, paper)
    values = {
        row.ref: values_of(row, typed if row.ref == ref else {})
        for row in now.rows
        if row.ref == ref
    }
    values |= {
        row.ref: {c.name: getattr(row.result, c.name) for c in row.columns}
        for row in now.rows
        if row.ref != ref and row.result
    }
    return copied(record, now, values, {"paper": paper})


def test_only_rows_with_something_are_kept() -> None:
    record = put(house(), "C1", None, zs_ohm="0.62", live_earth_mohm=">200")
    (result,) = record.results
    assert (result.about, result.zs_ohm) == ("C1", Decimal("0.62"))
    assert (result.live_earth_mohm, result.live_earth_over) == (Decimal(200), "over")


def test_another_paper_is_another_result_and_the_same_is_put_right() -> None:
    papers = [{"ref": ref, "kind": "condition_report"} for ref in ("Q1", "Q2")]
    from app.domain.record import Paper

    record = house().having(papers=tuple(map(Paper.model_validate, papers)))
    record = put(record, "C1", "Q1", zs_ohm="0.62")
    record = put(record, "C1", "Q2", zs_ohm="0.80")
    assert [r.zs_ohm for r in record.results] == [Decimal("0.62"), Decimal("0.8")]
    record = put(record, "C1", "Q1", zs_ohm="0.63")
    assert [r.zs_ohm for r in record.results] == [Decimal("0.63"), Decimal("0.8")]
    record = put(record, "C1", "Q1")
    assert [r.paper for r in record.results] == ["Q2"]


def test_over_time_the_newest_comes_first() -> None:
    results = tuple(
        Result(ref=f"V{n}", about="C1", tested_on=day, zs_ohm=zs)
        for n, (day, zs) in enumerate(
            [
                (date(2011, 1, 1), Decimal(1)),
                (date(2021, 1, 1), None),
                (None, Decimal(2)),
                (date(2016, 1, 1), Decimal(3)),
            ]
        )
    )
    record = house().having(results=results)
    assert [r.ref for r in results_of(record, "C1")] == ["V1", "V3", "V0", "V2"]
    found = latest(record, "C1", "zs_ohm")
    assert found is not None
    assert found.ref == "V3"
    assert results_of(record, None) == ()


VALUES = st.decimals(0, 9999, places=4)


@given(value=VALUES, sign=st.sampled_from(["", ">", "<"]))
def test_what_is_kept_is_shown_as_it_was_typed(value: Decimal, sign: str) -> None:
    record = put(house(), "C1", None, live_earth_mohm=f"{sign}{value}")
    column = next(c for c in COLUMNS if c.name == "live_earth_mohm")
    again = read(shown(record.results[0], column), column.unit)
    assert (again.value, again.sign) == (
        value, {"": "exact", ">": "over", "<": "under"}[sign]
    )  # fmt: skip


@pytest.mark.parametrize(
    "typed",
    [
        {"live_earth_mohm": "200 GΩ"},
        {"zs_ohm": "35.25 mΩ"},
        {"rcd_ms": ">300"},
        {"zs_ohm": "1,667"},
    ],
    ids=str,
)
def test_what_a_result_cannot_hold_as_written_is_refused(
    typed: dict[str, str],
) -> None:
    with pytest.raises(ValueError, match=r"Enter at most|No >|two ways"):
        values_of(sheet(house()).rows[1], typed)


def test_a_sheet_saved_again_keeps_the_day_of_each_row() -> None:
    record = house()
    sheet_now = sheet(record, "Q1")
    first = {"C1": {"zs_ohm": Decimal("0.5")}, "C2": {"zs_ohm": Decimal("0.7")}}
    record = copied(record, sheet_now, first, {"paper": "Q1", "tested_by": "A. Tester"})
    days = [date(2025, 3, 1), date(2025, 3, 2)]
    results = [
        result.model_copy(update={"tested_on": day})
        for result, day in zip(record.results, days, strict=True)
    ]
    record = record.having(results=tuple(results))
    head = {"paper": "Q1", "tested_on": None}
    again = copied(record, sheet(record, "Q1"), first, head)
    assert [r.tested_on for r in again.results] == days
    assert {r.tested_by for r in again.results} == {"A. Tester"}


def test_a_day_that_all_rows_share_can_be_emptied() -> None:
    record = house()
    values = {"C1": {"zs_ohm": Decimal("0.5")}, "C2": {"zs_ohm": Decimal("0.7")}}
    head = {"paper": "Q1", "tested_on": date(2025, 3, 1)}
    record = copied(record, sheet(record, "Q1"), values, head)
    assert {r.tested_on for r in record.results} == {date(2025, 3, 1)}
    again = copied(
        record, sheet(record, "Q1"), values, {"paper": "Q1", "tested_on": None}
    )
    assert {r.tested_on for r in again.results} == {None}


@pytest.mark.parametrize(
    ("typed", "asked"),
    [("<1", True), ("1", False), (">1", False), ("<0.99", True), ("<2", True)],
)
def test_less_than_the_limit_is_below_it(typed: str, asked: bool) -> None:
    row = next(row for row in sheet(house(), None).rows if row.ref == "C1")
    found = questions(row, values_of(row, {"live_earth_mohm": typed}), "tn_c_s")
    assert bool(found) is asked
