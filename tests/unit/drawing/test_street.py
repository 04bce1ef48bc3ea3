from __future__ import annotations

from pathlib import Path

import pytest

from app.domain.record import Record
from app.domain.record.choices import OWNERS
from app.drawing.scene import Frame
from app.drawing.street import draw_street, street_scene
from app.drawing.supply import NOT_RECORDED, supply_of
from tests.unit.drawing.checks import (
    HOUSES,
    assert_laid_out,
    assert_legible,
    drawn_refs,
    link,
    links,
    nowhere,
    parsed,
    read_house,
    record,
    said,
)

CUPBOARD = {
    "sources": [
        {"ref": "GRID", "kind": "network", "present": "yes", "owner": "network"},
        {"ref": "PV", "kind": "solar", "present": "yes", "joins": "C1"},
        {"ref": "GEN", "kind": "generator", "present": "no"},
        {"ref": "BAT", "kind": "battery", "present": "unknown"},
    ],
    "intake": [
        {"ref": "I1", "kind": "service_cable", "owner": "network", "fed_from": "GRID"},
        {
            "ref": "I2",
            "kind": "cutout",
            "owner": "network",
            "fed_from": "I1",
            "seal": "no",
            "condition": "hot",
        },
        {"ref": "I3", "kind": "meter", "owner": "meter_operator", "fed_from": "I2"},
        {
            "ref": "I4",
            "kind": "tails",
            "owner": "consumer",
            "fed_from": "I3",
            "csa_mm2": 25,
        },
        {"ref": "I5", "kind": "contactor", "fed_from": "I3", "when": "off_peak"},
        {"ref": "HUB", "kind": "communications_hub", "owner": "meter_operator"},
        {"ref": "MET", "kind": "earthing_terminal", "basis": "seen"},
    ],
    "boards": [{"ref": "B1", "name": "Main board", "fed_from": "I4"}],
    "devices": [
        {"ref": "MS", "board": "B1", "kind": "main_switch", "rated_current_a": 100},
        {"ref": "W1", "board": "B1", "kind": "circuit_breaker", "fed_from": "MS"},
        {"ref": "OP", "board": "B1", "kind": "main_switch", "fed_from": "I5"},
    ],
    "circuits": [{"ref": "C1", "name": "Panels", "ways": ["W1"]}],
}


@pytest.mark.parametrize("path", HOUSES, ids=lambda path: path.stem)
def test_each_house_is_drawn_whole(path: Path) -> None:
    house = read_house(path)
    root = parsed(draw_street(house, link))
    refs = drawn_refs(root)
    assert len(refs) == len(set(refs))
    assert {item.ref for item in (*house.intake, *house.boards)} <= set(refs)
    assert {s.ref for s in house.sources if s.present != "no"} <= set(refs)
    scene = street_scene(house, link)
    assert_laid_out(scene)
    assert_legible(scene)


@pytest.mark.parametrize("path", HOUSES, ids=lambda path: path.stem)
def test_the_same_house_gives_the_same_bytes(path: Path) -> None:
    once, again = (draw_street(read_house(path), link) for _ in range(2))
    assert once == again


def test_items_stand_in_order_from_the_street() -> None:
    refs = drawn_refs(parsed(draw_street(record(**CUPBOARD), link)))
    line = [ref for ref in refs if ref in ("GRID", "I1", "I2", "I3", "I4", "B1")]
    assert line == ["GRID", "I1", "I2", "I3", "I4", "B1"]


def test_a_branch_and_a_device_fed_past_its_board_are_drawn() -> None:
    supply = supply_of(record(**CUPBOARD))
    assert supply.fed["I3"] == ("I4", "I5")
    assert supply.fed["I5"] == ("OP",)
    assert supply.fed["I4"] == ("B1",)


def test_it_says_where_the_supply_changes_hands() -> None:
    text = said(parsed(draw_street(record(**CUPBOARD), link)))
    assert "Changes hands here above: network · below: meter operator" in text
    assert "Changes hands here above: meter operator below: yours" in text
    assert "May change hands here above: meter operator" in text


def test_it_says_what_is_seen_and_what_is_not_known() -> None:
    text = said(parsed(draw_street(record(**CUPBOARD), link)))
    for words in (
        "Network · rating not known",
        "no seal · hot, buzzing, scorched or smelling",
        "Network · way in not known",
        "Yours · 25 mm²",
        "off-peak hours only",
        "Earthing not known",
        "none recorded",
        "Also there",
        "Panels on Main board",
        "Solar panels can feed back",
        "whether there is one: not known",
        "Answered no: generator or its inlet.",
        "Not answered whether these can feed the",
    ):
        assert words in text


def test_what_is_not_known_is_dashed() -> None:
    scene = street_scene(record(**CUPBOARD), link)
    dashed = {
        thing.ref
        for thing in scene.things()
        for part in thing.parts
        if isinstance(part, Frame) and part.dashed
    }
    assert {"I1", "I2", "I3", "I5", "BAT", "H"} <= dashed
    assert not {"GRID", "I4", "MET"} & dashed


def test_each_owner_has_a_band_of_its_own() -> None:
    chain = [
        {"ref": f"I{n}", "kind": "other", "owner": owner, "fed_from": f"I{n - 1}"}
        for n, owner in enumerate(OWNERS)
    ]
    scene = street_scene(record(intake=chain), link)
    bands = [p.hatch for p in scene.parts if isinstance(p, Frame) and p.hatch]
    assert bands == list(OWNERS)


def test_links_lead_where_they_should() -> None:
    house = record(**CUPBOARD)
    found = links(parsed(draw_street(house, link)))
    assert found["I3"] == "/things/I3?a=1&b=2"
    assert links(parsed(draw_street(house, nowhere))) == {}


def test_what_is_brought_forward_is_marked_with_a_word() -> None:
    plain = said(parsed(draw_street(record(**CUPBOARD), link)))
    marked = said(parsed(draw_street(record(**CUPBOARD), link, frozenset({"I3"}))))
    assert "This one" not in plain
    assert marked.count("This one") == 1


def test_an_empty_record_says_that_it_is() -> None:
    text = said(parsed(draw_street(record(), link)))
    assert "Earthing not known" in text
    assert "Not answered" in text


@pytest.mark.parametrize(
    ("items", "words"),
    [
        ({"intake": [{"ref": "I1", "kind": "meter"}]}, NOT_RECORDED),
        (
            {"intake": [{"ref": "I1", "kind": "meter", "fed_from": "X9"}]},
            "X9, which is not in",
        ),
        (
            {
                "intake": [
                    {"ref": "I1", "kind": "meter", "name": "One", "fed_from": "I2"},
                    {"ref": "I2", "kind": "tails", "name": "Two", "fed_from": "I1"},
                ]
            },
            "Fed from Two, by the record; no source",
        ),
        (
            {
                "boards": [{"ref": "B", "name": "Self", "fed_from": "W"}],
                "devices": [{"ref": "W", "board": "B", "kind": "rcbo"}],
            },
            "no source leads there",
        ),
    ],
)
def test_a_supply_from_nowhere_or_in_a_circle_is_drawn_and_said(
    items: dict[str, object], words: str
) -> None:
    root = parsed(draw_street(record(**items), link))
    assert words in said(root)
    refs = drawn_refs(root)
    assert len(refs) == len(set(refs))


def test_text_of_the_record_is_escaped() -> None:
    nasty = "<script>\"x\"</script> & 'y'"
    house: Record = record(intake=[{"ref": "I1", "kind": "meter", "name": nasty}])
    svg = draw_street(house, link)
    parsed(svg)
    assert "<script" not in svg
    assert nasty in {t.title.split(". ")[0] for t in street_scene(house, link).things()}
