from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest
from hypothesis import given

from app.domain.record import Record
from app.drawing.file import as_file
from app.drawing.one_line import one_line_blocks, one_line_scene
from app.drawing.render import render
from app.drawing.scene import Frame, Scene, Stroke
from tests import builders as b
from tests.big_home import big_home
from tests.property.strategies import homes
from tests.unit.drawing.checks import (
    HOUSES,
    assert_clear,
    assert_laid_out,
    assert_legible,
    link,
    links,
    nowhere,
    parsed,
    read_house,
    said,
)

PLANT = b.home(
    b.street(
        b.board(
            "B1",
            b.main_switch(
                "MS",
                b.rcd(
                    "R1",
                    b.way(
                        "W1",
                        b.circuit(
                            "C1",
                            name="Ring",
                            number="4",
                            line_mm2=2.5,
                            cpc_mm2=1.5,
                            cable="twin_and_earth",
                            arrangement="ring",
                            length_m=40,
                        ),
                        way="1",
                        label_found="SKTS",
                    ),
                    rcd_type="A",
                ),
                b.way("W2", b.circuit("C2", name="Garage feed"), way="2"),
                b.way("W3", way="3"),
                b.way("W4", way="4", in_use="spare"),
                b.way("W5", way="5", rated_current_a=None, curve="unknown"),
            ),
            b.device("BL", kind="blank"),
            name="Main board",
        )
    ),
    b.board(
        "B2", b.way("G1", way="1"), b.way("G2"), name="Garage board", fed_from="C2"
    ),
    b.source("PV", kind="solar", joins="C1", owner="consumer"),
    b.circuit("C3", name="Loose end"),
    b.circuit("C4", name="Two ways", ways=("W1", "W2")),
)


def block(title: str, house: Record = PLANT) -> Scene:
    return next(s for s in one_line_blocks(house, link) if s.title == title)


def text_of(scene: Scene) -> str:
    return said(parsed(render(scene)))


def assert_whole(house: Record) -> None:
    """Every device but a blank, and every circuit, is drawn; nothing overlaps."""
    scenes = one_line_blocks(house, link)
    for scene in scenes:
        assert_laid_out(scene)
        assert_clear(scene)
        assert_legible(scene)
    supply, *boards = scenes
    drawn = Counter(thing.ref for scene in boards for thing in scene.things())
    on_boards = {d.ref for each in house.boards for d in house.devices_of(each.ref)}
    for device in house.devices:
        expected = device.kind != "blank" and device.ref in on_boards
        assert drawn[device.ref] == expected, device.ref
    assert {board.ref for board in house.boards} <= set(drawn)
    drawn.update(thing.ref for thing in supply.things())
    assert {item.ref for item in (*house.circuits, *house.devices)} <= set(drawn) | {
        device.ref for device in house.devices if device.kind == "blank"
    }
    sheet = one_line_scene(house, nowhere)
    assert_laid_out(sheet)
    assert_clear(sheet)


@pytest.mark.parametrize("path", HOUSES, ids=lambda path: path.stem)
def test_each_house_is_drawn_whole(path: Path) -> None:
    assert_whole(read_house(path))


def test_a_large_home_is_drawn_whole() -> None:
    assert_whole(big_home())


@given(homes)
def test_any_home_is_drawn_whole(house: Record) -> None:
    assert_whole(house)


def test_a_deep_chain_begins_anew_at_the_edge() -> None:
    deep = b.way("D9", b.circuit("C9"))
    for n in range(6, 0, -1):
        deep = b.way(f"D{n}", deep, b.way(f"E{n}", in_use="spare"))
    house = b.home(b.street(b.board("B1", deep, name="Deep")))
    assert_whole(house)
    assert "Goes on from Circuit-breaker · B\xa032" in [
        t.text for t in block("Deep", house).texts()
    ]


def test_a_way_says_its_rating_cable_circuit_and_points() -> None:
    text = text_of(block("Main board"))
    for words in (
        "Fed from Tails",
        "Main switch · 100 A",
        "RCD · 63 A · 30 mA · type A",
        "Way 1 · B 32",
        "Circuit-breaker · “SKTS”",
        "4 Ring 2.5/1.5 mm² · flat twin and earth",
        "40 m",
        "to Garage board",
        "cable size not known",
        "spare",
        "not recorded what it feeds",
        "not known: rating, tripping type",
        "Solar panels can feed back into it",
        "Left out: 1 blank.",
        "also from Way 2 on Main board",
    ):
        assert words in text, words


def test_a_board_taller_than_a_page_is_drawn_in_parts() -> None:
    ways = [b.way(f"W{n}", b.circuit(f"C{n}"), way=str(n)) for n in range(24)]
    rcd = b.rcd("R1", *ways[12:], rcd_type="A")
    house = b.home(b.street(b.board("B1", b.main_switch("MS", *ways[:12], rcd))))
    parts = one_line_blocks(house, link)[1:]
    assert_whole(house)
    assert len(parts) > 2
    assert max(part.height for part in parts) < 1000
    assert [p.title for p in parts[:2]] == ["A board", "A board, part 2"]
    assert "Main switch · 100 A, once more" in text_of(parts[1])
    said_once = [t.text for part in parts for t in part.texts()]
    assert said_once.count("Fed from Tails") == 1


def test_devices_without_a_main_switch_hang_on_one_feed() -> None:
    text = text_of(block("Garage board"))
    assert "Fed from Garage feed on Main board" in text
    assert "2 devices straight from here" in text


def test_what_is_not_known_is_dashed() -> None:
    main = block("Main board")
    dashed = {
        thing.ref
        for thing in main.things()
        for part in thing.parts
        if isinstance(part, Frame) and part.dashed
    }
    assert dashed == {"W5"}
    broken = [p for p in main.parts if isinstance(p, Stroke) and p.dashes]
    # The cables of C2 and C4, at two ways, and the two ways that feed nothing known.
    assert len(broken) == 5


def test_the_supply_says_its_earthing_and_every_source() -> None:
    text = text_of(block("The supply"))
    for words in (
        "The network in the street",
        "Cut-out Network · 100 A",
        "Solar panels",
        "can feed back through Ring on Main board",
        "Earthing: not known",
        "External loop impedance, Ze: not known",
        "Not answered whether these can feed the home",
    ):
        assert words in text, words


def test_known_supply_facts_are_not_framed() -> None:
    known = b.home(
        b.one_way(),
        *b.no_other_sources(),
        earthing="tn_s",
        earthing_basis="document",
        phases="single",
        ze_ohm=0.35,
        fault_current_ka=1.2,
    )
    supply = block("The supply", known)
    frames = [p for p in supply.parts if isinstance(p, Frame)]
    assert not any(frame.dashed for frame in frames)
    assert "Ze: 0.35 Ω" in text_of(supply)


def test_a_circuit_on_no_way_is_drawn_apart() -> None:
    loose = block("Circuits on no way")
    assert [t.ref for t in loose.things()] == ["no way", "C3"]
    assert "Loose end" in text_of(loose)


def test_a_board_without_devices_says_so() -> None:
    empty = b.home(b.board("B1", name="Bare"))
    assert "No devices are recorded on this board." in text_of(block("Bare", empty))


def test_devices_and_circuits_lead_to_their_pages() -> None:
    found = links(parsed(render(block("Main board"))))
    assert {"B1", "MS", "R1", "W1", "C1", "C2"} <= set(found)


def test_an_empty_home_is_drawn() -> None:
    assert_laid_out(one_line_scene(b.home(), nowhere))


def test_a_file_opens_from_the_disk() -> None:
    text = as_file(one_line_scene(PLANT, nowhere))
    assert "href" not in text
    assert parsed(text.partition("?>\n")[2].replace(*_no_style(text)))


def _no_style(text: str) -> tuple[str, str]:
    start, end = text.index("<style>"), text.index("</style>") + len("</style>")
    return text[start:end], ""
