"""One cell as one value: what is understood, and in what words the rest is refused."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from app.domain.record import SORTS, specs
from app.domain.spreadsheet.marks import cable_sizes, whole_device
from app.domain.spreadsheet.shapes import FORMULA
from app.domain.spreadsheet.typed_list import cells_of
from app.domain.spreadsheet.values import UnreadableError, value_of
from app.domain.spreadsheet.words import BY_FIELD


def read(field: str, text: str) -> Any:
    sort, name = field.split(".")
    spec = next(spec for spec in specs(SORTS[sort]) if spec.name == name)
    return value_of(spec, sort, text)


@pytest.mark.parametrize(
    ("field", "text", "value"),
    [
        ("circuit.arrangement", "RING", "ring"),
        ("circuit.arrangement", "Ring main", "ring"),
        ("circuit.arrangement", "radial", "radial"),
        ("circuit.use", "Lights", "lighting"),
        ("circuit.use", "water_heating", "water_heating"),
        ("circuit.use", "EV charger", "vehicle"),
        ("circuit.cable", "T&E", "twin_and_earth"),
        ("circuit.cable", "SWA", "armoured"),
        ("circuit.method", "c", "C"),
        ("circuit.line_mm2", "2,5 mm²", Decimal("2.5")),
        ("circuit.line_mm2", "2.50mm2", Decimal("2.5")),
        ("circuit.length_m", "18 m", Decimal(18)),
        ("circuit.connected_w", "7.2kW", Decimal(7200)),
        ("circuit.connected_w", "7200", Decimal(7200)),
        ("circuit.grouped_with", "3", 3),
        ("circuit.name", "  Up\u00a0 stairs\n", "Up stairs"),
        ("circuit.note", "=cmd|'/C calc'!A0", "=cmd|'/C calc'!A0"),
        ("device.kind", "MCB", "circuit_breaker"),
        ("device.kind", "Rewirable fuse (BS 3036)", "fuse_rewirable"),
        ("device.poles", "DP", "line_and_neutral"),
        ("device.curve", "Type B", "B"),
        ("device.rated_current_a", "32 amps", Decimal(32)),
        ("device.breaking_capacity_ka", "6000 A", Decimal(6)),
        ("device.label_found", "-", ""),
        ("device.label_found", "", None),
        ("point.kind", "2 gang socket", "double_socket"),
        ("point.kind", "FCU", "fused_connection_unit"),
        ("point.outdoor", "Y", "yes"),
        ("point.care", "Freezer, Fridge", ("freezer", "fridge")),
        *(("point.fuse_a", text, None) for text in ("", " ", "?", "-", "n/k", "TBC")),
    ],
)
def test_a_cell_is_understood(field: str, text: str, value: Any) -> None:
    assert read(field, text) == value


@pytest.mark.parametrize(
    ("field", "text", "reason"),
    [
        ("device.rated_current_a", "32x", "is no number in A: it ends in “x”"),
        ("device.rated_current_a", "lots", "is no number, such as 2.5 A"),
        ("device.rated_current_a", "1001", "is not within 0 to 1000"),
        ("device.rated_current_a", "0 A", "is not above 0"),
        ("point.fuse_a", "0", "is not above 0"),
        ("circuit.length_m", "1,200", "may be read in two ways"),
        ("circuit.length_m", "1.2.3", "is no number"),
        ("circuit.length_m", "0.00001", "more than four digits"),
        ("circuit.line_mm2", "2.5 A", "is no number in mm²"),
        ("circuit.grouped_with", "1.5", "is no whole number"),
        ("circuit.arrangement", "radal", "Is it “Radial”?"),
        ("circuit.arrangement", "xyzzy", "There are: Ring final, Radial, Dist"),
        ("circuit.name", "x" * 121, "is 121 characters long; 120 is the most"),
        ("circuit.name", "#N/A", "is an error that a formula left"),
        ("circuit.name", FORMULA, "does not hold its result"),
        ("circuit.ref", "a b", "is no reference"),
        ("point.outdoor", "x", "is none of its choices"),
    ],
)
def test_what_cannot_be_held_is_said(field: str, text: str, reason: str) -> None:
    with pytest.raises(UnreadableError) as refused:
        read(field, text)
    assert reason in str(refused.value)


@pytest.mark.parametrize("field", BY_FIELD)
def test_every_word_stands_for_a_code_that_there_is(field: str) -> None:
    sort, name = field.split(".")
    spec = next(spec for spec in specs(SORTS[sort]) if spec.name == name)
    assert set(BY_FIELD[field].values()) <= set(spec.choices)
    own = {words.lower() for words in spec.choices.values()}
    clashing = {w for w in BY_FIELD[field] if w in own and read(field, w) is None}
    assert clashing == set()


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("B32", {"curve": "B", "rated_current_a": Decimal(32)}),
        ("32A Type B", {"curve": "B", "rated_current_a": Decimal(32)}),
        ("C 16A MCB", {"curve": "C", "rated_current_a": 16, "kind": "circuit_breaker"}),
        (
            "RCBO B32 30mA type A",
            {
                "kind": "rcbo", "curve": "B", "rated_current_a": 32,
                "residual_current_ma": 30, "rcd_type": "A",
            },
        ),
        ("RCD 63A 30mA", {"kind": "rcd", "rated_current_a": 63,
                          "residual_current_ma": 30}),
        ("RCD type B", {"kind": "rcd", "rcd_type": "B"}),
        ("B6 6kA", {"curve": "B", "rated_current_a": 6, "breaking_capacity_ka": 6}),
        ("BS3036 30A", {"kind": "fuse_rewirable", "rated_current_a": 30}),
        ("Main switch 100 A", {"kind": "main_switch", "rated_current_a": 100}),
        ("7.5 A", {"rated_current_a": Decimal("7.5")}),
    ],
)  # fmt: skip
def test_what_is_printed_on_a_device_is_read(text: str, values: Any) -> None:
    assert whole_device(text) == values


@pytest.mark.parametrize(
    "text", ["32x", "Sockets", "B32 sockets", "E32", "40", "B32 A6"]
)
def test_what_is_not_printed_on_a_device_is_refused(text: str) -> None:
    with pytest.raises(UnreadableError, match="not understood"):
        whole_device(text)


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("2.5/1.5 mm²", {"line_mm2": Decimal("2.5"), "cpc_mm2": Decimal("1.5")}),
        ("2,5mm2 / 1,5mm2", {"line_mm2": Decimal("2.5"), "cpc_mm2": Decimal("1.5")}),
        ("6 mm² T+E", {"line_mm2": 6, "cable": "twin_and_earth"}),
        ("10 SWA", {"line_mm2": 10, "cable": "armoured"}),
        ("T&E", {"cable": "twin_and_earth"}),
        ("2.5", {"line_mm2": Decimal("2.5")}),
    ],
)
def test_cable_sizes_are_read_and_none_is_guessed(text: str, values: Any) -> None:
    assert cable_sizes(text) == values


@pytest.mark.parametrize("text", ["thick", "2.5/1.5/1", "2.5 rope"])
def test_what_is_no_cable_is_refused(text: str) -> None:
    with pytest.raises(UnreadableError, match="not understood"):
        cable_sizes(text)


@pytest.mark.parametrize(
    ("line", "cells"),
    [
        ("1 Sockets up B32", ("1", "Sockets up", "B32", "Sockets up", "sockets")),
        ("way 2: Lights", ("2", "Lights", "", "Lights", "lighting")),
        ("3. Shower lights C6", ("3", "Shower lights", "C6", "Shower lights", "")),
        ("4 - B16", ("4", "-", "B16", "", "")),
        ("5 Spare", ("5", "Spare", "", "", "")),
        ("8 - Hall", ("8", "Hall", "", "Hall", "")),
        ("9-Hall", ("9", "Hall", "", "Hall", "")),
        ("6", ("6", "", "", "", "")),
        ("7\tBoiler RCBO B16 30mA", ("7", "Boiler", "B16 30mA", "Boiler", "")),
        ("RCD 63A 30mA", ("", "", "RCD", "", "")),
        (
            "Garage time switch",
            ("", "Garage time switch", "", "Garage time switch", ""),
        ),
        ("L1 Hall", ("L1", "Hall", "", "Hall", "")),
    ],
)
def test_a_typed_line_is_taken_apart(line: str, cells: tuple[str, ...]) -> None:
    found = cells_of(line)
    way, label, device, circuit, use = cells
    assert found.get("way", "") == way
    assert found.get("label_found", "") == label
    assert all(part in found.get("device", "") for part in device.split())
    assert (found.get("ways.circuit", ""), found.get("use", "")) == (circuit, use)
