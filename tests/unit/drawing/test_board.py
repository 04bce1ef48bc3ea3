from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest

from app.domain.record import Device
from app.drawing.board import ROW, board_scene, draw_board
from app.drawing.face import label_of
from app.drawing.rcd_group import brackets
from app.drawing.scene import Frame, Stroke
from tests.unit.drawing.checks import (
    HOUSES,
    assert_laid_out,
    drawn_refs,
    link,
    links,
    nowhere,
    parsed,
    read_house,
    record,
    said,
)

HALL = {
    "boards": [{"ref": "B1", "name": "Hall board", "enclosure": "metal"}],
    "devices": [
        {"ref": "MS", "board": "B1", "kind": "main_switch", "rated_current_a": 100},
        {
            "ref": "R1",
            "board": "B1",
            "kind": "rcd",
            "way": "2",
            "fed_from": "MS",
            "rated_current_a": 63,
        },
        {
            "ref": "W3",
            "board": "B1",
            "kind": "circuit_breaker",
            "way": "3",
            "fed_from": "R1",
            "curve": "B",
            "rated_current_a": 32,
            "in_use": "in_use",
            "label_found": "SKTS",
        },
        {
            "ref": "W4",
            "board": "B1",
            "kind": "circuit_breaker",
            "way": "4",
            "fed_from": "R1",
        },
        {"ref": "W5", "board": "B1", "kind": "blank", "way": "5"},
        {
            "ref": "W6",
            "board": "B1",
            "kind": "rcbo",
            "way": "6",
            "fed_from": "MS",
            "in_use": "spare",
            "label_found": "",
            "modules": 3,
        },
    ],
    "circuits": [{"ref": "C1", "name": "Downstairs sockets", "ways": ["W3"]}],
}


@pytest.mark.parametrize("path", HOUSES, ids=lambda path: path.stem)
def test_each_board_of_a_house_is_drawn_in_order(path: Path) -> None:
    house = read_house(path)
    for board in house.boards:
        lit = frozenset(d.ref for d in house.devices_of(board.ref)[1:3])
        refs = drawn_refs(parsed(draw_board(house, board.ref, link, lit)))
        assert refs == [device.ref for device in house.devices_of(board.ref)]
        assert_laid_out(board_scene(house, board.ref, link, lit))


@pytest.mark.parametrize("path", HOUSES, ids=lambda path: path.stem)
def test_faces_of_a_row_stand_side_by_side_in_their_width(path: Path) -> None:
    house = read_house(path)
    for board in house.boards:
        things = board_scene(house, board.ref, link).things()
        for one, two in pairwise(things):
            in_row = two.box.y == one.box.y
            assert two.box.x == (one.box.right if in_row else things[0].box.x)


def test_a_face_is_as_wide_as_recorded_else_as_its_kind() -> None:
    things = {t.ref: t for t in board_scene(record(**HALL), "B1", link).things()}
    one = things["W3"].box.width
    assert things["MS"].box.width == 2 * one
    assert things["W6"].box.width == 3 * one


def test_a_long_board_goes_on_in_a_second_row() -> None:
    ways = [
        {"ref": f"W{n}", "board": "B1", "kind": "circuit_breaker"} for n in range(20)
    ]
    house = record(boards=[{"ref": "B1", "name": "Long"}], devices=ways)
    scene = board_scene(house, "B1", link)
    tops = [thing.box.y for thing in scene.things()]
    assert tops == [tops[0]] * ROW + [tops[ROW]] * (20 - ROW)
    assert tops[ROW] > tops[0]
    assert "goes on:" in said(parsed(draw_board(house, "B1", link)))


def test_a_face_says_what_is_recorded_and_what_is_not() -> None:
    text = said(parsed(draw_board(record(**HALL), "B1", link)))
    for words in (
        "Hall board",
        "where it is: not recorded",
        "Main switch",
        "B 32",
        "“SKTS”",
        "Downstairs sockets",
        "? A",
        "? mA",
        "type ?",
        "in use?",
        "label not noted",
        "nothing written",
        "what it feeds",
        "spare",
        "blank",
    ):
        assert words in text


def test_a_way_in_doubt_is_dashed_and_a_blank_is_hatched() -> None:
    things = {t.ref: t for t in board_scene(record(**HALL), "B1", link).things()}
    frames = {
        ref: [part for part in thing.parts if isinstance(part, Frame)]
        for ref, thing in things.items()
    }
    assert frames["W4"][0].dashed
    assert not frames["W3"][0].dashed
    assert [frame.hatch for frame in frames["W5"]] == [None, "blank"]
    assert frames["MS"][0].weight > frames["W3"][0].weight


def test_devices_behind_an_rcd_are_bracketed_under_its_name() -> None:
    house = record(**HALL)
    found = brackets(house.devices_of("B1"), frozenset())
    assert [(b.head.ref, b.first, b.last, b.level) for b in found] == [("R1", 2, 3, 0)]
    text = said(parsed(draw_board(house, "B1", link)))
    assert "RCD way 2" in text or "way 2 ? mA" in text


def test_brackets_end_with_the_row_and_an_rcd_behind_another_lies_inside() -> None:
    def device(ref: str, kind: str, fed_from: str | None) -> Device:
        return Device.model_validate(
            {"ref": ref, "board": "B", "kind": kind, "fed_from": fed_from}
        )

    row = [
        device("R1", "rcd", None),
        device("W1", "circuit_breaker", "R1"),
        device("R2", "rcd", "R1"),
        device("W2", "circuit_breaker", "R2"),
        device("W3", "circuit_breaker", "R2"),
    ]
    found = {
        (b.head.ref, b.first, b.last, b.level) for b in brackets(row, frozenset({4}))
    }
    assert found == {("R2", 3, 3, 0), ("R2", 4, 4, 0), ("R1", 1, 3, 1), ("R1", 4, 4, 1)}


@pytest.mark.parametrize(
    ("label", "words"),
    [
        (None, "label not noted"),
        ("", "nothing written"),
        ("-", "nothing written"),
        ("UP", "“UP”"),
    ],
)
def test_a_label_without_words_is_said_to_be_so(label: str | None, words: str) -> None:
    values = {"ref": "W1", "board": "B1", "kind": "rcbo", "label_found": label}
    assert label_of(Device.model_validate(values)) == words


NIGHT = {
    "sources": [{"ref": "GRID", "kind": "network", "present": "yes"}],
    "intake": [
        {"ref": "T1", "kind": "tails", "fed_from": "GRID"},
        {"ref": "CON", "kind": "contactor", "fed_from": "T1", "when": "off_peak"},
    ],
    "boards": [
        {"ref": "B1", "name": "Day", "fed_from": "T1"},
        {"ref": "B2", "name": "Night", "fed_from": "CON"},
    ],
    "devices": [
        {"ref": "MS", "board": "B1", "kind": "main_switch"},
        {
            "ref": "W1",
            "board": "B1",
            "kind": "circuit_breaker",
            "way": "1",
            "fed_from": "MS",
        },
        {
            "ref": "W2",
            "board": "B1",
            "kind": "changeover",
            "way": "2",
            "fed_from": "MS",
            "second_feed": "CON",
        },
        {
            "ref": "W3",
            "board": "B1",
            "kind": "circuit_breaker",
            "way": "3",
            "fed_from": "CON",
        },
        {"ref": "W4", "board": "B1", "kind": "contactor", "way": "4", "fed_from": "MS"},
        {"ref": "MS2", "board": "B2", "kind": "main_switch"},
    ],
}


def test_feeds_apart_from_the_board_s_own_are_written_below_with_their_hours() -> None:
    house = record(**NIGHT)
    scene = board_scene(house, "B1", link)
    below = [
        "Way 2: second feed Contactor (off-peak hours only)",
        "Way 3: fed from Contactor (off-peak hours only)",
        "Way 4: hours not known",
    ]
    text = said(parsed(draw_board(house, "B1", link)))
    assert " ".join(below) in text
    assert all(words in scene.description for words in below)
    assert "Way 1:" not in text
    assert "Main switch MS:" not in text
    assert_laid_out(scene)


def test_a_board_that_is_live_at_some_hours_only_says_so() -> None:
    house = record(**NIGHT)
    night, day = (board_scene(house, ref, link).texts() for ref in ("B2", "B1"))
    assert "off-peak hours only" in {text.text for text in night}
    assert "off-peak hours only" not in {text.text for text in day}


def test_a_board_with_another_feed_at_all_times_names_no_hours() -> None:
    both = {"ref": "CO", "kind": "changeover", "fed_from": "CON", "second_feed": "T1"}
    boards = [{"ref": "B1", "name": "Both", "fed_from": "CO"}]
    intake = [*NIGHT["intake"], both]
    house = record(**{**NIGHT, "intake": intake, "boards": boards})
    assert "off-peak" not in {t.text for t in board_scene(house, "B1", link).texts()}


def test_a_figure_of_0_is_drawn_as_not_known() -> None:
    way = {"ref": "W1", "board": "B1", "kind": "circuit_breaker", "way": "1"}
    zero = {"curve": "B", "rated_current_a": 0, "residual_current_ma": 0}
    boards = [{"ref": "B1", "name": "Hall"}]
    text = said(
        parsed(draw_board(record(boards=boards, devices=[way | zero]), "B1", link))
    )
    assert "? A" in text
    assert "0 A" not in text
    assert "mA" not in text


def test_links_lead_to_the_devices() -> None:
    house = record(**HALL)
    found = links(parsed(draw_board(house, "B1", link)))
    assert found == {d.ref: link(d.ref) for d in house.devices}
    assert links(parsed(draw_board(house, "B1", nowhere))) == {}


def test_what_is_lit_has_a_mark_and_a_word() -> None:
    house = record(**HALL)
    plain, marked = (
        board_scene(house, "B1", link, frozenset(lit)) for lit in ("", ["W3"])
    )
    arrows = [p for p in marked.strokes() if isinstance(p, Stroke) and p.filled]
    assert len(arrows) == 1
    assert "here" in {t.text for t in marked.texts()} - {t.text for t in plain.texts()}
    assert [t.ref for t in marked.things() if t.lit] == ["W3"]
    assert "drawing__thing--lit" in draw_board(house, "B1", link, frozenset({"W3"}))


def test_a_shortened_label_keeps_the_whole_in_its_title() -> None:
    label = 'Sockets of the kitchen and the scullery and <b>"both"</b> bedrooms & hall'
    house = record(
        boards=[{"ref": "B1", "name": "Hall"}],
        devices=[
            {"ref": "W1", "board": "B1", "kind": "rcbo", "label_found": label},
        ],
    )
    svg = draw_board(house, "B1", link)
    parsed(svg)
    assert "<b>" not in svg
    assert f"“{label}”" in {t.whole for t in board_scene(house, "B1", link).texts()}


@pytest.mark.parametrize("ref", ["B2", "MS", "", "no such"])
def test_a_board_that_is_not_there_is_said_to_be_so(ref: str) -> None:
    root = parsed(draw_board(record(**HALL), ref, link, id_prefix="b"))
    assert "This board is not in the record" in said(root)
    assert drawn_refs(root) == []


def test_an_empty_board_says_so() -> None:
    house = record(boards=[{"ref": "B1", "name": "Bare"}])
    text = said(parsed(draw_board(house, "B1", link)))
    assert "No devices are recorded on this board." in text
    assert "enclosure not known" in text
