from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from app.domain.record import Record
from app.errors import InvalidError
from app.interchange import document, document_schema, from_document, to_document
from tests import json_schema

HOUSES = Path(__file__).parents[2] / "houses"
NAMES = sorted(path.stem for path in HOUSES.glob("h*.json"))
SMALL = {
    "format": "ways-and-points record",
    "version": 1,
    "home": {"ref": "small", "name": "Small"},
    "rooms": [{"ref": "R1", "name": "Hall"}],
    "points": [{"ref": "P1", "kind": "light", "room": "R1"}],
}


def bytes_of(**changed: Any) -> bytes:
    return json.dumps(SMALL | changed).encode()


def problems(data: bytes) -> list[tuple[str, str]]:
    with pytest.raises(InvalidError) as refusal:
        from_document(data)
    assert "othing was changed" in str(refusal.value)
    return [(problem.place, problem.reason) for problem in refusal.value.problems]


@pytest.mark.parametrize("name", NAMES)
def test_a_test_home_comes_back_as_it_went(
    name: str, houses: dict[str, Record]
) -> None:
    text = to_document(houses[name])
    assert from_document(text.encode()) == houses[name]
    assert to_document(from_document(text.encode())) == text


def test_the_demo_home_comes_back_as_it_went(demo: Record) -> None:
    assert from_document(to_document(demo).encode()) == demo


@pytest.mark.parametrize("name", NAMES)
def test_a_document_is_as_its_schema_says(name: str, houses: dict[str, Record]) -> None:
    schema = document_schema()
    assert json_schema.errors(json.loads(to_document(houses[name])), schema) == []
    as_kept = json.loads((HOUSES / f"{name}.json").read_text("utf-8"))
    assert json_schema.errors(as_kept, schema) == []


def test_the_schema_refuses_what_the_program_refuses() -> None:
    wrong = SMALL | {"points": [{"ref": "P1", "kind": "light", "colour": "red"}]}
    assert json_schema.errors(wrong, document_schema()) == [
        "$.points[0].colour: not in the schema"
    ]


def test_a_mark_at_the_beginning_is_no_harm() -> None:
    assert from_document(b"\xef\xbb\xbf" + bytes_of()) == from_document(bytes_of())


def test_what_a_list_leaves_out_is_not_known() -> None:
    (point,) = from_document(bytes_of()).points
    assert point.current == "unknown"
    assert point.fuse_a is None


HEADING = {
    "no format": ({"format": None}, "format"),
    "another format": ({"format": "another record"}, "format"),
    "no version": ({"version": None}, "version"),
    "a newer version": ({"version": 2}, "version"),
    "an older version": ({"version": 0}, "version"),
    "yes for a version": ({"version": True}, "version"),
    "a version with a point": ({"version": 1.0}, "version"),
    "text for a version": ({"version": "1"}, "version"),
}


@pytest.mark.parametrize(("changed", "place"), HEADING.values(), ids=HEADING)
def test_a_heading_is_refused(changed: dict[str, Any], place: str) -> None:
    ((where, reason),) = problems(bytes_of(**changed))
    assert where == place
    assert reason.endswith(".")


def test_a_newer_version_is_named() -> None:
    ((_, reason),) = problems(bytes_of(version=7))
    assert reason == "Version 7 is newer than this program knows; it reads 1."


TEXT = {
    "not UTF-8": (bytes_of() + b"\xff", "byte ", "not UTF-8"),
    "UTF-16": (json.dumps(SMALL).encode("utf-16"), "byte 0", "not UTF-8"),
    "nothing": (b"", "the file", "It is empty."),
    "blank": (b"\xef\xbb\xbf \n", "the file", "It is empty."),
    "a picture": (b"\xff\xd8\xff\xe0\0\x10JFIF", "the file", ".json file"),
    "a letter": (b"Dear Ash,", "the file", "no document of a home"),
    "cut short": (bytes_of()[:-2], "line 1", "not whole JSON"),
    "two documents": (bytes_of() * 2, "line 1", "not whole JSON"),
    "a list": (b"[]", "the document", "an object"),
    "a number": (b"1", "the file", "no document of a home"),
    "a key twice": (b'{"a": 1, "a": 2}', "the document", "“a” stands twice"),
    "a key twice inside": (
        bytes_of()[:-1] + b', "ties": [{"ref": "T1", "ref": "T2"}]}',
        "the document",
        "“ref” stands twice",
    ),
    "no number": (b'{"a": NaN}', "the document", "NaN is not"),
    "no end": (b'{"a": -Infinity}', "the document", "-Infinity is not"),
    "many digits": (b'{"a": ' + b"9" * 5000 + b"}", "the document", "5000 digits"),
    "deep": (b'{"a": ' + b"[" * 13 + b"]" * 13 + b"}", "the document", "too deeply"),
    "bottomless": (b"[" * 100_000, "the document", "too deeply"),
    "half a character": (
        bytes_of(home={"ref": "a", "name": "\ud800"}),
        "home.name",
        "half a character",
    ),
    "half a character in a key": (
        bytes_of(home={"ref": "a", "name": "b", "\ud800": 1}),
        "home",
        "half a character",
    ),
}


@pytest.mark.parametrize(("data", "place", "said"), TEXT.values(), ids=TEXT)
def test_what_is_no_document_is_refused(data: bytes, place: str, said: str) -> None:
    ((where, reason),) = problems(data)
    assert where.startswith(place)
    assert said in reason
    reason.encode()


def test_a_document_that_is_too_large_is_refused(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(document, "MOST_BYTES", 2**20)
    with pytest.raises(InvalidError, match=r"larger than 1 MB\. Nothing was changed"):
        from_document(bytes_of() + b" " * 2**20)


def test_too_many_items_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(document, "MOST_ITEMS", 1)
    assert problems(bytes_of()) == [
        ("the document", "It holds 2 items; 1 is the most.")
    ]


FIELDS = {
    "an unknown key": ({"rooms": [{"ref": "R1", "name": "A", "x": 1}]}, "rooms[0].x"),
    "an unknown list": ({"people": []}, "people"),
    "text for a number": (
        {"points": [{"ref": "P1", "kind": "light", "load_w": "60"}]},
        "points[0].load_w",
    ),
    "yes for a number": (
        {"points": [{"ref": "P1", "kind": "light", "count": True}]},
        "points[0].count",
    ),
    "a number for text": ({"rooms": [{"ref": "R1", "name": 5}]}, "rooms[0].name"),
    "a number for a date": (
        {"ties": [{"ref": "T1", "point": "P1", "tied_to": "C1", "seen_on": 86400}]},
        "ties[0].seen_on",
    ),
    "an unknown code": ({"points": [{"ref": "P1", "kind": "tap"}]}, "points[0].kind"),
    "too small": (
        {"points": [{"ref": "P1", "kind": "light", "fuse_a": -1}]},
        "points[0].fuse_a",
    ),
    "too fine": (
        {"points": [{"ref": "P1", "kind": "light", "fuse_a": 0.00001}]},
        "points[0].fuse_a",
    ),
    "endless": (
        {"points": [{"ref": "P1", "kind": "light", "fuse_a": 1}], "home": None},
        "home",
    ),
    "a missing field": ({"rooms": [{"ref": "R1"}]}, "rooms[0].name"),
    "an object for a list": ({"rooms": {}}, "rooms"),
    "a bad reference": ({"rooms": [{"ref": "R 1", "name": "A"}]}, "rooms[0].ref"),
    "two lines for one": (
        {"rooms": [{"ref": "R1", "name": "A\nB"}]},
        "rooms[0].name",
    ),
}


@pytest.mark.parametrize(("changed", "place"), FIELDS.values(), ids=FIELDS)
def test_a_field_is_refused_at_its_place(changed: dict[str, Any], place: str) -> None:
    found = problems(
        bytes_of(points=[], **changed)
        if "points" not in changed
        else bytes_of(**changed)
    )
    assert [where for where, _ in found] == [place]
    assert all(reason for _, reason in found)


def test_every_problem_is_said() -> None:
    rooms = [{"ref": "R1"}, {"ref": "R2", "name": 3}]
    places = [place for place, _ in problems(bytes_of(rooms=rooms))]
    assert places == ["rooms[0].name", "rooms[1].name"]


LINKS = {
    "used twice": (
        {"rooms": [{"ref": "R1", "name": "A"}, {"ref": "R1", "name": "B"}]},
        "rooms[1].ref",
        "R1 is already used at rooms[0]",
    ),
    "used twice across sorts": (
        {"points": [{"ref": "R1", "kind": "light"}]},
        "points[0].ref",
        "R1 is already used at rooms[0]",
    ),
    "leading nowhere": (
        {"points": [{"ref": "P1", "kind": "light", "room": "R9"}]},
        "points[0].room",
        "There is no R9",
    ),
    "naming the wrong sort": (
        {
            "points": [{"ref": "P1", "kind": "light"}],
            "controls": [{"ref": "K1", "controller": "R1", "controlled": "P1"}],
        },
        "controls[0].controller",
        "R1 is a room",
    ),
    "in a circle": (
        {
            "intake": [
                {"ref": "I1", "kind": "isolator", "fed_from": "I2"},
                {"ref": "I2", "kind": "isolator", "fed_from": "I1"},
            ]
        },
        "intake[0]",
        "feed each other",
    ),
}


@pytest.mark.parametrize(("changed", "place", "said"), LINKS.values(), ids=LINKS)
def test_references_are_looked_at(
    changed: dict[str, Any], place: str, said: str
) -> None:
    found = problems(bytes_of(**changed))
    assert [where for where, _ in found] == [place]
    assert said in found[0][1]
