"""Corrections that come back: refused whole, or taken one by one."""

from __future__ import annotations

import json
from collections.abc import Callable
from io import BytesIO
from typing import Any

import pytest

from app.domain.pack import PARTS, kept_back
from app.domain.record import Record
from app.interchange import to_document
from tests.pages import CheckedClient, Page, page_of, text_of

Stored = Callable[..., Record]
LIST = "/homes/H1/corrections/"
SAID = {
    "format": "ways-and-points reply", "version": 1, "home": "H1", "by": "A. Person",
    "paper": "17/26", "dated": "2026-10-01", "other": "The rod is loose.",
    "ways": [{"ref": "W1", "feeds": "the shed"}],
}  # fmt: skip


def sent(here: CheckedClient, content: str) -> Page:
    file = (BytesIO(content.encode()), "reply.json")
    data: dict[str, Any] = {"csrf_token": here.token(), "reply": file}
    return page_of(here.post(f"{LIST}file", data=data))


def test_a_reply_is_shown_and_taken(here: CheckedClient, stored: Stored) -> None:
    page = here.go_on(sent(here, json.dumps(SAID)))
    assert page.h1 == "Corrections from A. Person, 17/26, 1 October 2026"
    assert "2 differences are open." in page.main
    assert "Here it feeds: Kitchen sockets." in page.main
    assert "The rod is loose." in page.main
    after = here.go_on(here.submit_on(page, press=f"Add to the note: {way(stored)}"))
    assert after.undo.startswith("Accepted from 17/26, 1 October 2026")
    assert "One difference is open." in after.main
    assert [paper.number for paper in stored().papers] == ["17/26"]
    here.go_on(here.submit_on(after, press="Undo"))
    page = here.see(f"{LIST}1")
    assert "2 differences are open." in page.main
    press = "Add to the home’s notes: Said beside that"
    here.go_on(here.submit_on(page, press=press))
    assert stored().home.notes == "17/26, 1 October 2026: The rod is loose."


def way(stored: Stored) -> str:
    return f"{stored().by_ref['W1'].title} (W1)"


def test_words_can_be_the_name_of_the_circuit_or_be_turned_down(
    here: CheckedClient, stored: Stored
) -> None:
    page = here.go_on(sent(here, json.dumps(SAID)))
    name = f"Take as the circuit’s name: {way(stored)}"
    here.go_on(here.submit_on(page, press=name))
    assert stored().circuits[0].name == "the shed"
    other = SAID | {"ways": [{"ref": "W2", "feeds": "the attic"}], "other": ""}
    page = here.go_on(sent(here, json.dumps(other)))
    down = next(text for text in buttons(page) if text.startswith("Turn down"))
    before = stored()
    after = here.go_on(here.submit_on(page, press=down))
    assert "Nothing is open." in after.main
    assert stored() == before


def buttons(page: Page) -> list[str]:
    return ["".join(e.itertext()).strip() for e in page.all("button")]


def test_a_record_that_came_back_is_set_beside_ours(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    points = tuple(
        p.model_copy(update={"place": "left of the sink"}) if p.ref == "P1" else p
        for p in small.points
    )
    returned = kept_back(small.having(points=points), tuple(PARTS))
    page = here.go_on(sent(here, to_document(returned)))
    assert "One difference is open." in page.main
    assert "Where in the room: “by the sink” → “left of the sink”" in page.main
    accept = next(text for text in buttons(page) if text.startswith("Accept"))
    after = here.go_on(here.submit_on(page, press=accept))
    assert stored().points[0].place == "left of the sink"
    again = here.submit_on(page, press=accept)
    assert again.status == 409
    assert "Nothing is open." in after.main


def test_what_is_left_can_be_thrown_away(here: CheckedClient) -> None:
    page = here.go_on(sent(here, json.dumps(SAID)))
    after = here.go_on(here.submit_on(page, press="Throw what is left away"))
    assert "What came back" not in after.main
    assert here.see(f"{LIST}1", 404).h1


@pytest.mark.parametrize(
    ("content", "said"),
    [
        ("not json", "This is no reply and no record document."),
        ("[1]", "This is no reply and no record document."),
        (json.dumps(SAID | {"home": "H2"}), "It is about the home 'H2', not “H1”."),
        (json.dumps(SAID | {"version": 2}), "This program reads version 1."),
        (json.dumps(SAID | {"more": 1}), "A reply has no such field."),
        (json.dumps(SAID | {"ways": "x"}), "ways"),
        ("{}", "format"),
        (json.dumps(SAID | {"home": "\ud800"}), "It is about the home"),
        (json.dumps(SAID | {"by": "\ud800"}), "It holds half a character."),
        (json.dumps(SAID | {"by": "x" * 121}), "by"),
    ],
)
def test_what_is_no_reply_is_refused_with_where(
    here: CheckedClient, content: str, said: str
) -> None:
    page = sent(here, content)
    assert page.status == 422
    assert said in page.main


def test_a_paper_is_typed_in(here: CheckedClient, stored: Stored) -> None:
    lines = "W1: feeds the shed\nC2 the attic lights"
    page = here.save(LIST, press="Take it down", by="A. Person", lines=lines)
    assert "2 differences are open." in page.main
    none = "There is no “{}” in this home. Begin with a reference of this home"
    for wrong, said in (
        ("!! what", none.format("!!")),
        ("The shed is on W1", none.format("The")),
        ("B9.W9: the shed", none.format("B9.W9")),
        ("W1", "Say what W1 feeds"),
    ):
        page = here.submit(LIST, press="Take it down", lines=wrong)
        assert page.status == 422
        assert f"line 1: {said}" in page.main
        assert page.value("lines", "Take it down").strip() == wrong
    page = here.submit(LIST, press="Take it down", lines=" ")
    assert "Enter at least one line." in page.error("lines")


def test_the_example_of_a_typed_correction_is_one_that_is_taken(
    here: CheckedClient, keep: Callable[[Record], int], small: Record
) -> None:
    example = "feeds the shed, not the garage."
    hint = text_of(here.see(LIST).by_id["lines-hint"])
    assert hint == f"Such as: W1 {example}"
    page = here.save(LIST, press="Take it down", lines=hint.removeprefix("Such as: "))
    assert "One difference is open." in page.main
    empty = Record(home=small.home.model_copy(update={"ref": "H2"}))
    keep(empty)
    page = here.see("/homes/H2/corrections/")
    assert text_of(page.by_id["lines-hint"]) == f"Such as: D4 {example}"


def test_a_file_must_be_chosen(here: CheckedClient) -> None:
    page = here.submit(LIST, press="Bring it in")
    assert (page.status, "Choose a file first." in page.main) == (422, True)
