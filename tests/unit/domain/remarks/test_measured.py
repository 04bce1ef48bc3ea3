"""What papers say of insulation, loops and buttons, at the limits."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from app.domain.record import Occasion, Record, Result
from app.domain.results import questions_of
from app.services.remarks import remarks_of
from tests.builders import board, circuit, home, main_switch, rcd, socket, street, way
from tests.unit.domain.remarks.cases import (
    TODAY,
    behind_rcds,
    of_load,
    of_polarity,
    with_button,
)


def codes(record: Record, outcome: str = "remark") -> set[str]:
    return {r.code for r in remarks_of(record, TODAY) if r.outcome == outcome}


def measured_on(earthing: str, **fields: Any) -> Record:
    """A circuit of 32 A behind an RCD of 30 mA, with one result."""
    wired = circuit("C1", socket("P1"), cable="twin_and_earth", use="sockets")
    guarded = rcd(
        "RCD",
        way("W1", wired, rated_current_a=32, curve="B"),
        residual_current_ma=30,
    )
    record = home(
        street(board("B1", main_switch("MS", guarded), earthing="supply")),
        earthing=earthing,
        ze_ohm=0.3,
        ze_basis="measured",
    )
    result = Result.model_validate({"ref": "V1", "about": "C1", **fields})
    return record.having(results=(result,))


@pytest.mark.parametrize(
    ("value", "sign", "low"),
    [("1", "under", True), ("1", "exact", False), ("2", "under", False)],
)
def test_less_than_the_limit_is_low(value: str, sign: str, low: bool) -> None:
    record = measured_on("tn_c_s", live_earth_mohm=Decimal(value), live_earth_over=sign)
    assert ("insulation-low" in codes(record)) is low


def test_less_than_more_than_the_limit_says_too_little() -> None:
    record = measured_on("tn_c_s", live_earth_mohm=Decimal(2), live_earth_over="under")
    assert "insulation-low" in codes(record, "cannot_tell")
    exact = measured_on("tn_c_s", live_earth_mohm=Decimal(2))
    assert "insulation-low" not in codes(exact, "cannot_tell")


def test_with_an_electrode_the_rcd_answers_for_an_earth_fault() -> None:
    high = {"zs_ohm": Decimal(40)}
    assert "measured-loop-high" not in codes(measured_on("tt", **high))
    # 50 V / 30 mA = 1667 Ω: BS 7671:2018+A2:2022, 411.5.3.
    for ohm, too_much in ((1666, False), (1668, True), (20_000, True)):
        found = codes(measured_on("tt", zs_ohm=Decimal(ohm)))
        assert ("measured-loop-high" in found) is too_much
    assert "measured-loop-high" in codes(measured_on("tn_c_s", **high))


def on_electrode(**fields: Any) -> Record:
    """A circuit of 32 A without an RCD, on an electrode."""
    cable = {"cable": "twin_and_earth", "arrangement": "radial", "use": "fixed"}
    sizes = {"line_mm2": 6, "cpc_mm2": 2.5, "length_m": 10}
    hung = way("W1", circuit("C1", **cable, **sizes), rated_current_a=32, curve="B")
    return home(
        street(board("B1", main_switch("MS", hung), earthing=fields.pop("own", "tt"))),
        **{"earthing": "tt"} | fields,
    )


def test_every_circuit_on_an_electrode_without_an_rcd_is_remarked_on() -> None:
    code = "electrode-without-rcd"
    for own in ("tt", "supply", "unknown"):
        assert code in codes(on_electrode(own=own))
    assert code in codes(on_electrode(earthing="tn_c_s"))
    assert code not in codes(on_electrode(own="supply", earthing="tn_c_s"))
    unsaid = on_electrode(own="supply", earthing="unknown")
    assert code in codes(unsaid, "cannot_tell")


def test_a_low_loop_lets_its_device_open_without_an_rcd() -> None:
    code = "electrode-without-rcd"
    low, high = {"ze_ohm": "0.3"}, {"ze_ohm": 21}
    assert code not in codes(on_electrode(ze_basis="measured", **low))
    assert code in codes(on_electrode(ze_basis="measured", **high))
    # A paper goes before: 1.37 Ω for B 32 A, four fifths of it 1.09 Ω.
    for ohm, remarked in (("1.09", False), ("1.10", True)):
        paper = {"ref": "V1", "about": "C1", "zs_ohm": Decimal(ohm)}
        record = on_electrode(**high).having(results=(Result.model_validate(paper),))
        assert (code in codes(record)) is remarked


def test_an_rcd_that_failed_is_none_on_an_electrode() -> None:
    record = measured_on("tt", rcd_button="failed")
    (found,) = [
        r for r in remarks_of(record, TODAY) if r.code == "electrode-without-rcd"
    ]
    assert "no RCD to count on" in found.sentence
    assert "by a paper without a day" in found.sentence


def test_with_an_rcd_nothing_says_that_a_device_on_an_electrode_opens_too_late() -> (
    None
):
    record = on_electrode(ze_ohm=90, ze_basis="measured")
    assert "loop-impedance-high" in codes(record)
    guarded = record.having(
        devices=tuple(
            d.model_copy(update={"residual_current_ma": Decimal(30)})
            if d.ref == "W1"
            else d
            for d in record.devices
        )
    )
    found = codes(guarded)
    assert not found & {"loop-impedance-high", "electrode-without-rcd"}


def test_a_failed_button_is_remarked_on_until_it_worked() -> None:
    record = with_button("failed", date(2026, 3, 1))
    assert "button-failed" in codes(record)
    worked = Occasion(
        ref="O2",
        kind="rcd_button",
        about="RCD",
        done_on=date(2026, 4, 1),
        outcome="worked",
    )
    assert "button-failed" not in codes(
        record.having(occasions=(*record.occasions, worked))
    )
    earlier = worked.model_copy(update={"done_on": date(2026, 2, 1)})
    assert "button-failed" in codes(
        record.having(occasions=(*record.occasions, earlier))
    )


def test_a_paper_that_says_so_is_remarked_on_too() -> None:
    assert "button-failed" in codes(measured_on("tn_c_s", rcd_button="failed"))
    assert "button-failed" not in codes(measured_on("tn_c_s", rcd_button="worked"))


def pressed(ref: str, about: str | None, outcome: str, day: date) -> Occasion:
    return Occasion(
        ref=ref, kind="rcd_button", about=about, done_on=day, outcome=outcome
    )


@pytest.mark.parametrize("about", [None, "B1", "RCD"])
def test_a_button_that_failed_counts_whatever_it_was_written_down_for(
    about: str | None,
) -> None:
    record = measured_on("tn_c_s")
    failed = pressed("O1", about, "failed", date(2026, 3, 1))
    assert "button-failed" in codes(record.having(occasions=(failed,)))
    later = pressed("O2", about, "worked", date(2026, 4, 1))
    assert "button-failed" not in codes(record.having(occasions=(failed, later)))


@pytest.mark.parametrize(
    ("tested_on", "pressed_on", "stands"),
    [
        (date(2026, 3, 1), date(2026, 4, 1), False),
        (date(2026, 3, 1), date(2026, 2, 1), True),
        (None, date(2026, 4, 1), True),
    ],
)
def test_what_a_paper_says_of_a_button_stands_until_every_rcd_before_it_worked(
    tested_on: date | None, pressed_on: date, *, stands: bool
) -> None:
    record = measured_on("tn_c_s", rcd_button="failed", tested_on=tested_on)
    worked = pressed("O1", "RCD", "worked", pressed_on)
    found = codes(record.having(occasions=(worked,)))
    assert ("button-failed" in found) is stands


S_100 = {"time_delayed": "yes", "residual_current_ma": 100}
OPEN_100 = {"residual_current_ma": 100}
GENERAL = {"residual_current_ma": 30}


@pytest.mark.parametrize(
    ("ms", "rcds", "outcome"),
    [
        # BS EN 61008-1: 300 ms at IΔn for a general RCD, 500 ms for type S.
        ("300", (GENERAL,), ""),
        ("301", (GENERAL,), "remark"),
        ("500", (S_100,), ""),
        ("501", (S_100,), "remark"),
        # One that is not delayed opens first, wherever it is.
        ("301", (S_100, GENERAL), "remark"),
        ("301", (GENERAL, S_100), "remark"),
        ("300", (OPEN_100,), ""),
        ("301", (OPEN_100,), "cannot_tell"),
        ("301", (OPEN_100, S_100), "cannot_tell"),
        ("301", (), "cannot_tell"),
        ("501", (OPEN_100,), "remark"),
        ("501", (), "remark"),
    ],
)
def test_a_time_is_held_to_the_rcd_that_was_measured(
    ms: str, rcds: tuple[dict[str, Any], ...], outcome: str
) -> None:
    found = [
        r.outcome
        for r in remarks_of(behind_rcds(ms, *rcds), TODAY)
        if r.code == "rcd-slow"
    ]
    assert found == ([outcome] if outcome else [])


def test_an_rcd_is_held_to_its_own_time_not_to_those_before_it() -> None:
    behind = behind_rcds("28", S_100, GENERAL)
    results = (Result(ref="V1", about="RCD1", rcd_ms=Decimal(400)),)
    assert "rcd-slow" not in codes(behind.having(results=results))
    results = (Result(ref="V1", about="RCD2", rcd_ms=Decimal(400)),)
    assert "rcd-slow" in codes(behind.having(results=results))


def test_a_slip_is_asked_about_by_the_same_time() -> None:
    for ms, asked in (("400", 0), ("501", 1)):
        record = behind_rcds(ms, S_100)
        assert len(questions_of(record, record.results[0])) == asked
    record = behind_rcds("400", GENERAL)
    assert "longer than 300 ms" in questions_of(record, record.results[0])[0].sentence


@pytest.mark.parametrize(
    ("wrong_on", "right_on", "stands"),
    [
        (date(2026, 3, 1), date(2026, 4, 1), False),
        (date(2026, 3, 1), date(2026, 2, 1), True),
        (None, date(2026, 4, 1), True),
        (date(2026, 3, 1), None, True),
    ],
)
def test_a_wrong_polarity_stands_until_a_later_paper_says_the_contrary(
    wrong_on: date | None, right_on: date | None, *, stands: bool
) -> None:
    papers = (
        of_polarity("wrong", wrong_on),
        of_polarity("correct", right_on),
    )
    record = measured_on("tn_c_s").having(results=papers)
    assert ("polarity-wrong" in codes(record)) is stands


def test_a_supply_of_wrong_polarity_is_remarked_on() -> None:
    record = measured_on("tn_c_s").having(results=(of_polarity("wrong", about=None),))
    assert "polarity-wrong" in codes(record)


@pytest.mark.parametrize(
    ("watts", "outcome"), [(7300, ""), (7500, "cannot_tell"), (7700, "remark")]
)
def test_a_shower_is_judged_at_the_voltage_of_its_plate(
    watts: int, outcome: str
) -> None:
    # On 32 A: 7360 W at 230 V, 7680 W at 240 V.
    found = remarks_of(of_load("shower", watts), TODAY)
    assert (
        "".join(r.outcome for r in found if r.code == "shower-over-rating") == outcome
    )


def test_a_main_switch_of_which_nobody_said_what_it_feeds_is_asked_about() -> None:
    record = home(street(board("B1", main_switch("MS"), way("W1"), way("W2"))))
    assert "no-main-switch" not in codes(record)
    assert "no-main-switch" in codes(record, "cannot_tell")
