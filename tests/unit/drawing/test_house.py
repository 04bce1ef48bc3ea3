from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest
from hypothesis import given

from app.domain.record import Record
from app.drawing.file import as_file
from app.drawing.house import house_of
from app.drawing.line import lines_of, marks_at, tags_of
from app.drawing.render import render
from app.drawing.scene import Frame, Scene, Stroke, Text
from app.drawing.whole_house import house_bands, house_scene
from tests import builders as b
from tests.big_home import big_home
from tests.property.strategies import homes
from tests.unit.drawing.checks import (
    HOUSES,
    assert_clear,
    assert_laid_out,
    assert_legible,
    drawn_refs,
    link,
    links,
    nowhere,
    parsed,
    read_house,
    said,
)

SMALL = b.home(
    b.room("R1", name="Kitchen"),
    b.room("R2", name="Landing", storey="first"),
    b.room("R3", name="Garden", storey="outside"),
    b.room("R4", name="Pantry", looked_at="not_yet"),
    b.street(
        b.board(
            "B1",
            b.main_switch(
                "MS",
                b.way("W1", b.circuit("C1", name="Ring", number="7"), way="1"),
                b.way("W2", b.circuit("C2", name="Lights", number="7"), way="2"),
                b.way("W3", b.circuit("C3", name="Nothing yet"), way="3"),
            ),
        )
    ),
    b.socket("P1", room="R1", place="left of the sink"),
    b.light("P2", room="R2", count=3),
    b.socket("P3", room="R1", outdoor="yes"),
    b.light("P4", room="R3"),
    b.point("P5", kind="unknown", room="R1"),
    b.socket("P6"),
    b.fcu("P7", room="R1"),
    b.tie("P1", "C1"),
    b.tie("P2", "C2", grade="0"),
    b.tie("P3", "C1"),
    b.tie("P4", "C2"),
    b.tie("P6", "C1"),
    b.tie("P7", "C1"),
    b.tie("P7", "C2"),
)


def blocks(house: Record, lit: str = "") -> list[Scene]:
    bands, key = house_bands(house, link, lit)
    return [*(block for band in bands for block in band.blocks), *key]


def points_drawn(scenes: list[Scene], house: Record) -> Counter[str]:
    refs = {point.ref for point in house.points}
    return Counter(t.ref for s in scenes for t in s.things() if t.ref in refs)


def assert_whole(house: Record, lit: str = "") -> None:
    scenes = blocks(house, lit)
    for scene in scenes:
        assert_laid_out(scene)
        assert_clear(scene)
        assert_legible(scene)
    assert points_drawn(scenes, house) == {p.ref: 1 for p in house.points}
    sheet = house_scene(house, nowhere, lit)
    assert_laid_out(sheet)
    assert_clear(sheet)
    assert points_drawn([sheet], house) == {p.ref: 1 for p in house.points}


def assert_each_circuit_has_its_line(house: Record) -> None:
    """In the key once, with a tag and marks that no other line has."""
    _, key = house_bands(house, link)
    rows = Counter(thing.ref for scene in key for thing in scene.things())
    assert {c.ref for c in house.circuits} <= set(rows)
    assert set(rows.values()) <= {1}
    lines = lines_of(house).values()
    assert len({line.tag for line in lines}) == len(lines)
    assert len({line.marks for line in lines}) == len(lines)
    for scene in key:
        for row in scene.things():
            texts = [part.text for part in row.parts if isinstance(part, Text)]
            assert texts[0] == lines_of(house)[row.ref].tag
            assert any(isinstance(part, Stroke) for part in row.parts)


@pytest.mark.parametrize("path", HOUSES, ids=lambda path: path.stem)
def test_each_house_is_drawn_whole(path: Path) -> None:
    assert_whole(read_house(path))
    assert_each_circuit_has_its_line(read_house(path))


def test_a_large_home_is_drawn_whole() -> None:
    house = big_home()
    assert (len(house.boards), len(house.circuits)) == (3, 40)
    assert len(house.points) == 150
    assert_whole(house)
    assert_whole(house, "C5")
    assert_each_circuit_has_its_line(house)


@given(homes)
def test_any_home_is_drawn_whole(house: Record) -> None:
    assert_whole(house)
    assert_each_circuit_has_its_line(house)


def test_the_same_home_gives_the_same_bytes() -> None:
    once, again = (as_file(house_scene(big_home(), nowhere)) for _ in range(2))
    assert once == again


def test_storeys_and_rooms_stand_in_the_order_of_the_walk() -> None:
    storeys = house_of(SMALL).storeys
    assert [s.title for s in storeys] == [
        "Ground floor",
        "First floor",
        "Outside",
        "Room not known",
    ]
    assert [block.title for s in storeys for block in s.blocks] == [
        "Kitchen",
        "Pantry",
        "Landing",
        "Garden",
        "Outdoors, by the record",
        "No room recorded",
    ]


def test_a_point_outdoors_is_drawn_outside_with_its_room() -> None:
    [outdoors] = [s for s in blocks(SMALL) if s.title == "Outdoors, by the record"]
    assert [t.ref for t in outdoors.things()] == ["C1", "P3"]
    assert "Kitchen" in said(parsed(render(outdoors)))


def test_what_is_not_known_is_dashed_and_said() -> None:
    kitchen = blocks(SMALL)[0]
    dashed = {
        thing.ref
        for scene in blocks(SMALL)
        for thing in scene.things()
        for part in thing.parts
        if isinstance(part, Frame) and part.dashed
    }
    assert dashed == {"P2", "P5"}
    text = said(parsed(render(kitchen)))
    assert "Not known what feeds these" in text
    assert "not sure" in said(parsed(render(blocks(SMALL)[2])))
    assert "No points recorded yet" in said(parsed(render(blocks(SMALL)[1])))


def test_a_point_on_two_circuits_stands_once_and_names_the_other() -> None:
    kitchen = blocks(SMALL)[0]
    [point] = [t for t in kitchen.things() if t.ref == "P7"]
    assert "also on C2" in point.title
    assert [t.ref for t in kitchen.things()] == ["R1", "C1", "P1", "P7", "P5"]


def test_a_room_taller_than_a_page_is_drawn_in_parts() -> None:
    points = [b.light(f"P{n}", room="R1") for n in range(90)]
    house = b.home(b.room("R1", name="Barn"), *points)
    assert_whole(house)
    assert [s.title for s in blocks(house)][:2] == ["Barn", "Barn, part 2"]
    assert max(s.height for s in blocks(house)) < 1000


def test_many_alike_are_counted() -> None:
    assert "Light × 3" in said(parsed(render(blocks(SMALL)[2])))


def test_a_number_that_two_circuits_have_is_no_tag() -> None:
    tags = tags_of(SMALL)
    assert (tags["C1"], tags["C2"]) == ("C1", "C2")
    assert tags_of(big_home())["C5"] == "5"


def test_marks_are_never_the_same_twice() -> None:
    assert marks_at(0) == ()
    assert len({marks_at(place) for place in range(500)}) == 500


@pytest.mark.parametrize(
    ("lit", "forward"),
    [
        ("C1", {"C1", "P1", "P3", "P6", "P7"}),
        ("C2", {"C2", "P2", "P4", "P7"}),
        ("R1", {"R1", "C1", "P1", "P5", "P7"}),
        ("", set()),
    ],
)
def test_one_circuit_or_room_is_brought_forward(lit: str, forward: set[str]) -> None:
    bands, _ = house_bands(SMALL, link, lit)
    things = [t for band in bands for s in band.blocks for t in s.things()]
    assert {t.ref for t in things if t.lit} == forward
    for thing in things:
        assert ("Brought forward" in thing.title) == thing.lit
        frames = [p for p in thing.parts if isinstance(p, Frame)]
        assert all(f.faint == (bool(lit) and not thing.lit) for f in frames)


def test_names_are_escaped_and_links_kept() -> None:
    odd = b.home(b.room("R1", name="<Hall> & “stairs”"), b.socket("P1", room="R1"))
    [block] = blocks(odd)
    root = parsed(render(block))
    assert links(root)["P1"] == "/things/P1?a=1&b=2"
    assert "<Hall> & “stairs”" in said(root)
    assert drawn_refs(root) == ["R1", "P1"]


def test_an_empty_home_says_nothing_wrong() -> None:
    empty = b.home()
    bands, key = house_bands(empty, link)
    assert (bands, key) == ((), ())
    assert_laid_out(house_scene(empty, nowhere))


def test_a_file_holds_all_that_it_needs() -> None:
    text = as_file(house_scene(SMALL, nowhere, "C1"))
    assert text.startswith('<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns=')
    assert "<style>" in text
    assert "href" not in text
    assert "Brought forward: Ring." in text


def test_descriptions_name_every_point() -> None:
    described = " ".join(scene.description for scene in blocks(SMALL))
    assert "C1, Ring: Socket-outlet, size not noted, left of the sink" in described
    assert "Not known what feeds these: Not known" in described
    assert all(point.title in described for point in SMALL.points)
