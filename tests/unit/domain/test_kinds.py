"""Kinds: each one explains itself, and is drawn by a mark of its own."""

from __future__ import annotations

import re
from collections.abc import Mapping
from importlib import import_module
from pkgutil import iter_modules
from types import ModuleType
from xml.etree import ElementTree as ET

import pytest

from app.domain.kinds import (
    DEVICE_KINDS,
    INTAKE_KINDS,
    KIND_HELP,
    POINT_KINDS,
    DeviceKind,
    IntakeKind,
    Kind,
    PointKind,
    devices,
    intake,
    points,
)
from app.domain.kinds._kind import found_in
from app.domain.record import Device, IntakeItem
from app.domain.record.choices import OWNERS

FOLDERS: dict[str, tuple[ModuleType, Mapping[str, Kind]]] = {
    "device": (devices, DEVICE_KINDS),
    "intake": (intake, INTAKE_KINDS),
    "point": (points, POINT_KINDS),
}
EVERY = [
    pytest.param(folder, kind, id=f"{folder}-{code}")
    for folder, (_, kinds) in FOLDERS.items()
    for code, kind in kinds.items()
]
FORBIDDEN = re.compile(
    r"\b(dead|safe to work|compliant|certified|satisfactory|passed)\b", re.IGNORECASE
)
ELEMENTS = {"path", "line", "circle", "rect", "polyline", "text"}
ATTRIBUTES = {
    *("d", "x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "width", "height"),
    *("points", "fill", "stroke", "stroke-width", "stroke-dasharray"),
    *("font-size", "text-anchor"),
}


def drawn(kind: Kind) -> ET.Element:
    """Return a kind's symbol as parsed elements under one root."""
    return ET.fromstring(f"<svg>{kind.symbol}</svg>")  # noqa: S314 - our own text


@pytest.mark.parametrize(("folder", "kind"), EVERY)
def test_first_line_of_help_is_one_short_sentence(folder: str, kind: Kind) -> None:
    first = KIND_HELP[folder][kind.code].splitlines()[0]
    assert first.endswith(".")
    assert first.count(". ") == 0
    assert len(f'"""{first}') <= 88


@pytest.mark.parametrize(("folder", "kind"), EVERY)
def test_help_has_a_body_of_whole_sentences(folder: str, kind: Kind) -> None:
    _, blank, *body = KIND_HELP[folder][kind.code].splitlines()
    assert blank == ""
    text = " ".join(body)
    assert re.match(r"[A-Z].+\.$", text)
    assert 2 <= len(re.findall(r"\.(?: (?=[A-Z])|$)", text)) <= 6


@pytest.mark.parametrize(("folder", "kind"), EVERY)
def test_help_promises_nothing_that_a_record_cannot_know(
    folder: str, kind: Kind
) -> None:
    assert FORBIDDEN.findall(KIND_HELP[folder][kind.code]) == []


@pytest.mark.parametrize(("folder", "kind"), EVERY)
def test_symbol_is_plain_strokes(folder: str, kind: Kind) -> None:
    elements = list(drawn(kind).iter())[1:]
    assert elements
    assert {element.tag for element in elements} <= ELEMENTS
    assert {name for element in elements for name in element.attrib} <= ATTRIBUTES
    colours = {element.get("fill", "currentColor") for element in elements}
    assert colours == {"currentColor"}


@pytest.mark.parametrize("folder", FOLDERS)
def test_no_two_kinds_of_a_folder_share_a_symbol(folder: str) -> None:
    _, kinds = FOLDERS[folder]
    drawings: dict[str, list[str]] = {}
    for code, kind in kinds.items():
        drawings.setdefault(kind.symbol, []).append(code)
    assert [codes for codes in drawings.values() if len(codes) > 1] == []


@pytest.mark.parametrize("folder", FOLDERS)
def test_no_two_kinds_of_a_folder_share_a_label_or_a_place(folder: str) -> None:
    _, kinds = FOLDERS[folder]
    assert len({kind.label for kind in kinds.values()}) == len(kinds)
    assert len({kind.order for kind in kinds.values()}) == len(kinds)


@pytest.mark.parametrize("folder", FOLDERS)
def test_code_is_the_name_of_the_file(folder: str) -> None:
    package, kinds = FOLDERS[folder]
    names = [module.name for module in iter_modules(package.__path__)]
    for name in names:
        assert import_module(f"{package.__name__}.{name}").KIND.code == name
    assert set(kinds) == set(names)


def test_kinds_are_offered_in_their_order_and_not_known_comes_last() -> None:
    for _, kinds in FOLDERS.values():
        orders = [kind.order for kind in kinds.values()]
        assert orders == sorted(orders)
        assert list(kinds)[-1] == "unknown"


def test_fields_of_a_device_kind_are_fields_of_a_device() -> None:
    for kind in DEVICE_KINDS.values():
        assert set(kind.fields) <= set(Device.model_fields), kind.code


def test_fields_of_an_intake_kind_are_fields_of_an_intake_item() -> None:
    for kind in INTAKE_KINDS.values():
        assert set(kind.fields) <= set(IntakeItem.model_fields), kind.code


def test_a_kind_that_opens_something_asks_which_poles() -> None:
    kinds: list[DeviceKind | IntakeKind] = [
        *DEVICE_KINDS.values(),
        *INTAKE_KINDS.values(),
    ]
    for kind in kinds:
        if kind.opens != "none":
            assert "poles" in kind.fields, kind.code


def test_a_device_guarding_against_leakage_asks_at_what_current() -> None:
    for kind in DEVICE_KINDS.values():
        if "earth_leakage" in kind.protects:
            assert {"residual_current_ma", "rcd_type"} <= set(kind.fields), kind.code


def test_short_name_of_a_device_fits_its_face() -> None:
    shorts = [kind.short for kind in DEVICE_KINDS.values()]
    assert all(1 <= len(short) <= 8 for short in shorts)
    assert all(1 <= kind.modules <= 12 for kind in DEVICE_KINDS.values())


def test_usual_owner_is_a_known_owner() -> None:
    for kind in INTAKE_KINDS.values():
        assert kind.usual_owner in OWNERS, kind.code


def test_who_opens_is_said_in_whole_sentences() -> None:
    for kind in INTAKE_KINDS.values():
        assert kind.who_opens.endswith("."), kind.code


def test_what_belongs_to_others_is_never_a_switch_of_the_owner() -> None:
    theirs = {
        code: kind.opens
        for code, kind in INTAKE_KINDS.items()
        if kind.usual_owner in {"network", "meter_operator", "landlord"}
    }
    assert theirs == {
        "service_cable": "none",
        "lateral": "none",
        "cutout": "none",
        "meter": "none",
        "communications_hub": "none",
        "time_switch": "none",
    }


@pytest.mark.parametrize(
    ("code", "opens"),
    [
        ("main_switch", "line_and_neutral"),
        ("rcd", "line_and_neutral"),
        ("circuit_breaker", "line"),
        ("rcbo", "line"),
        ("fuse_rewirable", "line"),
        ("surge_protector", "none"),
    ],
)
def test_usual_poles_of_a_device(code: str, opens: str) -> None:
    assert DEVICE_KINDS[code].opens == opens


@pytest.mark.parametrize(
    ("code", "switches"),
    [
        ("switch", "line"),
        ("two_way_switch", "line"),
        ("pull_cord", "line"),
        ("fused_connection_unit", "none"),
        ("dc_isolator", "none"),
        ("cooker_outlet", "line_and_neutral"),
        ("shower_switch", "line_and_neutral"),
        ("light", "none"),
    ],
)
def test_usual_poles_of_a_switch_at_a_point(code: str, switches: str) -> None:
    assert POINT_KINDS[code].switches == switches


def test_what_goes_on_and_off_by_itself() -> None:
    for kinds in (DEVICE_KINDS, INTAKE_KINDS):
        found = {code for code, kind in kinds.items() if kind.switches_itself}
        assert found == {"contactor", "time_switch"}


def test_only_a_fused_connection_unit_guards_what_is_behind_it() -> None:
    found = [code for code, kind in POINT_KINDS.items() if kind.guards_onward]
    assert found == ["fused_connection_unit"]


@pytest.mark.parametrize("code", ["switch", "pull_cord", "two_way_switch"])
def test_a_light_switch_breaks_the_line_only_as_a_rule(code: str) -> None:
    assert "normally breaks the line only" in _plain("point", code)


@pytest.mark.parametrize(
    ("folder", "code", "words"),
    [
        ("device", "circuit_breaker", "no additional protection for a person"),
        ("intake", "time_switch", "area by area from the middle of 2025"),
        ("intake", "meter", "shares the neutral"),
        ("intake", "connector_block", "may mean that the home has more than one"),
        ("intake", "earth_electrode", "Where the earthing arrangement is TT"),
        ("point", "fused_connection_unit", "the record does not say which"),
    ],
)
def test_help_claims_no_more_than_it_may(folder: str, code: str, words: str) -> None:
    assert words in _plain(folder, code)


def _plain(folder: str, code: str) -> str:
    return " ".join(KIND_HELP[folder][code].split())


def test_only_a_fused_connection_unit_holds_a_fuse() -> None:
    fused = [code for code, kind in POINT_KINDS.items() if kind.has_fuse]
    assert fused == ["fused_connection_unit"]


def test_code_used_twice_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    light = import_module("app.domain.kinds.points.light")
    monkeypatch.setattr("app.domain.kinds._kind._modules", lambda _: [light, light])
    with pytest.raises(ValueError, match="used twice"):
        found_in(points, PointKind)


def test_module_without_a_kind_of_the_form_is_refused() -> None:
    with pytest.raises(ValueError, match="holds no KIND"):
        found_in(points, DeviceKind)
