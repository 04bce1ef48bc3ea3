"""The record as a document: out without loss, in whole or not at all."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

from app.domain.record import Record
from app.interchange import from_document, to_document
from tests.pages import CheckedClient, Page, page_of

Stored = Callable[..., Record]


def bring(
    client: CheckedClient, data: bytes, name: str = "home.json", beside: str = ""
) -> Page:
    head = "Content-Disposition: form-data; name="
    parts = [
        f'--edge\r\n{head}"csrf_token"\r\n\r\n{client.token()}\r\n'.encode(),
        f'--edge\r\n{head}"beside"\r\n\r\n{beside}\r\n'.encode(),
        f'--edge\r\n{head}"document"; filename="{name}"\r\n\r\n'.encode(),
        data,
        b"\r\n--edge--\r\n",
    ]
    kind = "multipart/form-data; boundary=edge"
    return page_of(client.post("/import", data=b"".join(parts), content_type=kind))


def test_the_download_is_the_document(here: CheckedClient, small: Record) -> None:
    page = here.see("/homes/H1/document")
    (form,) = [f for f in page.all("form") if f.get("action", "").endswith(".json")]
    response = here.get(form.get("action"))
    assert response.get_data(as_text=True) == to_document(small)
    assert response.mimetype == "application/json"
    disposition = response.headers["Content-Disposition"]
    assert disposition == 'attachment; filename="H1.json"'


@pytest.mark.parametrize("name", ["h01", "h02", "h05", "h06", "h07", "h10"])
def test_a_home_goes_out_and_comes_in_as_another(
    visitor: CheckedClient,
    keep: Callable[[Record], int],
    stored: Stored,
    houses: dict[str, Record],
    name: str,
) -> None:
    keep(houses[name])
    data = visitor.get(f"/homes/{name}/document.json").get_data()
    assert from_document(data) == houses[name]
    page = visitor.go_on(bring(visitor, data, beside="yes"))
    assert page.h1 == houses[name].home.name
    copy = stored(f"{name}-2")
    assert copy == houses[name].having(home=copy.home)
    assert stored(name) == houses[name]


def test_what_is_here_already_is_said_before_it_is_here_twice(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    data = to_document(small).encode()
    page = bring(here, data)
    assert (page.status, page.h1) == (422, "A home is here already")
    assert "A home (H1): nothing differs from the file." in page.main
    here.see("/homes/H1-2/", 404)
    here.save("/homes/H1/rooms/R1/edit", name="Scullery")
    page = bring(here, data)
    assert "1 thing differs from the file." in page.main
    looked = [to for to in page.links.values() if to.endswith("/corrections/")]
    assert looked == ["/homes/H1/corrections/"]
    assert "called H1-2" in page.main
    assert bring(here, data, beside="yes").location == "/homes/H1-2/"
    assert stored("H1-2").rooms == small.rooms


def test_a_home_of_the_same_name_is_here_already_too(
    here: CheckedClient, small: Record
) -> None:
    other = small.home.model_copy(update={"ref": "H7", "name": "a HOME"})
    page = bring(here, to_document(small.having(home=other)).encode())
    assert (page.status, "A home (H1)" in page.main) == (422, True)
    renamed = small.home.model_copy(update={"ref": "H7", "name": "Elsewhere"})
    data = to_document(small.having(home=renamed)).encode()
    assert bring(here, data).location == "/homes/H7/"


def document(small: Record, **changes: Any) -> bytes:
    return json.dumps(json.loads(to_document(small)) | changes).encode()


BAD: dict[str, tuple[Callable[[Record], bytes], str]] = {
    "nothing": (lambda _: b"", "the file: It is empty."),
    "a picture": (
        lambda _: b"\xff\xd8\xff\xe0",
        "no document of a home: that is a .json",
    ),
    "no JSON": (lambda _: b'{"format": ', "line 1, column 12"),
    "no text": (lambda _: b"\xff\xfe\x00", "byte 0"),
    "a list": (lambda _: b"[]", "the document"),
    "another format": (lambda s: document(s, format="x"), "format"),
    "a newer one": (lambda s: document(s, version=99), "version"),
    "deep": (lambda _: b"[" * 100_000, "the document"),
    "an unknown field": (lambda s: document(s, colour="red"), "colour"),
    "a wrong code": (
        lambda s: document(s, rooms=[{"ref": "R1", "name": "x", "storey": "<b>"}]),
        "rooms[0].storey",
    ),
    "a loose reference": (
        lambda s: document(s, points=[{"ref": "P1", "kind": "light", "room": "R9"}]),
        "points[0].room",
    ),
    "the same twice": (
        lambda s: document(s, rooms=[{"ref": "R1", "name": "x"}] * 2),
        "rooms[1].ref",
    ),
    "a script": (
        lambda s: document(s, **{"<script>alert(1)</script>": 1}),
        "<script>alert(1)</script>",
    ),
    "NaN": (lambda s: document(s).replace(b"100", b"NaN"), "the document"),
    "too much": (lambda _: b" " * (8 * 2**20 + 1), ""),
}


@pytest.mark.parametrize("what", BAD)
def test_a_bad_document_is_refused_with_its_place(
    here: CheckedClient, stored: Stored, small: Record, what: str
) -> None:
    make, place = BAD[what]
    page = bring(here, make(small))
    assert page.status == 422
    assert page.h1 == "The document was not taken"
    assert "othing was changed" in page.main
    assert place in page.main
    assert stored() == small
    assert len(here.see("/homes/").all("li")) == len(here.see("/homes/?x").all("li"))
    here.see("/homes/H1-2/", 404)


def test_a_document_must_be_chosen(here: CheckedClient) -> None:
    page = here.submit("/import", press="Bring it in")
    assert (page.status, "Choose a document first." in page.main) == (422, True)
    assert bring(here, b"{}", name="").status == 422


def test_a_file_name_does_no_harm(here: CheckedClient) -> None:
    page = bring(here, b"{}", name="../../<script>.json")
    assert page.status == 422
    assert "script" not in page.main


def test_a_document_beyond_all_measure_is_not_read(here: CheckedClient) -> None:
    page = bring(here, b" " * (9 * 2**20 + 1))
    assert page.status == 422
    assert "It is larger than 8 MB. Nothing was changed." in page.main
