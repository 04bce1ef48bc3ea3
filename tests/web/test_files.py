"""Photographs and papers: added, shown as pixels only, marked, compared."""

from __future__ import annotations

import re
import time
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from flask import Flask
from PIL import Image
from sqlalchemy import event

from app.config import Config
from app.domain.record import Attachment, Record, Spot
from app.interchange import from_document, to_document
from app.store import files
from app.web.files_view import MOST_ON_A_PAGE
from app.web.pages.attachments import ON_A_PAGE
from tests import builders as b
from tests import photographs as made
from tests.pages import CheckedClient, Page, page_of

Stored = Callable[..., Record]
NEW = "/homes/H1/files/new"
PICTURE = made.picture()


def sent(
    client: CheckedClient, data: bytes, name: str = "sink.jpg", **fields: str
) -> Page:
    file = (BytesIO(data), name)
    values = {"caption": "", "of": "P1", "then": "", **fields}
    page = client.send(NEW, {**values, "file": file})
    # What the client put on the disk to send it.
    page.response.request.environ["wsgi.input"].close()
    return page


def added(client: CheckedClient, data: bytes = PICTURE, **fields: str) -> Page:
    return client.go_on(sent(client, data, **fields))


def shown(client: CheckedClient, size: str, ref: str = "F1") -> bytes:
    answer = client.get(f"/homes/H1/files/{ref}/{size}")
    assert (answer.status_code, answer.mimetype) == (200, "image/jpeg")
    return answer.get_data()


def test_a_photograph_is_added_to_a_thing_and_shown_on_its_page(
    here: CheckedClient, stored: Stored, config: Config
) -> None:
    page = added(here, caption="Before the new tap")
    assert page.h1 == "Before the new tap"
    assert page.undo.startswith("Added photograph Before the new tap (F1) to Socket")
    [row] = stored().attachments
    assert (row.of, row.media_type, row.size) == (("P1",), "image/jpeg", len(PICTURE))
    assert row.file_name == "sink.jpg"
    kept = files.path_of(config.files, row.sha256)
    assert kept.read_bytes() == PICTURE
    point = here.see("/homes/H1/points/P1/")
    [image] = point.all("img")
    assert image.get("loading") == "lazy"
    assert here.get(image.get("src")).mimetype == "image/jpeg"
    assert point.links["Before the new tap"] == "/homes/H1/files/F1/"


@pytest.mark.parametrize(
    ("ref", "url"),
    [
        ("R1", "/homes/H1/rooms/R1/"),
        ("B1", "/homes/H1/boards/B1/"),
        ("W1", "/homes/H1/devices/W1/"),
        ("C1", "/homes/H1/circuits/C1/"),
        ("P1", "/homes/H1/points/P1/"),
        ("CUT", "/homes/H1/intake/"),
        ("GRID", "/homes/H1/sources/"),
    ],
)
def test_every_thing_takes_photographs(here: CheckedClient, ref: str, url: str) -> None:
    ways = [u for u in here.see(url).links.values() if u == f"{NEW}?of={ref}"]
    assert ways
    assert here.see(ways[0]).value("of", "Add it") == ref
    added(here, of=ref, caption="A look")
    assert here.see(url).links["A look"] == "/homes/H1/files/F1/"


@pytest.mark.parametrize("form", ["JPEG", "PNG", "WEBP"])
def test_what_is_shown_holds_pixels_only(here: CheckedClient, form: str) -> None:
    data = made.with_all_a_camera_writes(orientation=6, form=form)
    assert made.MAKER in data
    added(here, data)
    for size in ("small", "large"):
        jpeg = shown(here, size)
        for secret in (made.MAKER, made.COMMENT, made.SOFTWARE, b"Exif", b"GPS"):
            assert secret not in jpeg
        with Image.open(BytesIO(jpeg)) as image:
            assert set(image.info) <= {
                "jfif", "jfif_version", "jfif_unit", "jfif_density", "progressive",
                "progression",
            }  # fmt: skip
            assert not image.getexif()
            # Turned by a quarter: what was left is above.
            assert (image.width < image.height) == (size in ("small", "large"))
            colours = image.convert("RGB")
            above, below = (
                colours.getpixel((colours.width // 2, y))
                for y in (colours.height // 4, colours.height * 3 // 4)
            )
            assert isinstance(above, tuple)
            assert isinstance(below, tuple)
            assert above[0] > above[2]
            assert below[2] > below[0]


def test_the_day_that_the_camera_wrote_is_taken(
    here: CheckedClient, stored: Stored
) -> None:
    added(here, made.with_all_a_camera_writes())
    assert str(stored().attachments[0].taken_on) == "2026-03-01"


def test_the_original_is_downloaded_only_and_never_opened(here: CheckedClient) -> None:
    data = made.with_all_a_camera_writes()
    page = added(here, data)
    assert "which may say where it was taken" in page.main
    answer = here.get(page.links["Download the original"])
    assert answer.get_data() == data
    headers = answer.headers
    assert headers["Content-Disposition"] == 'attachment; filename="H1-F1.jpg"'
    assert headers["Content-Security-Policy"] == "default-src 'none'; sandbox"
    assert headers["X-Content-Type-Options"] == "nosniff"


def test_a_pdf_is_a_download(here: CheckedClient, stored: Stored) -> None:
    page = added(here, made.PDF, name="manual.pdf", of="")
    assert page.h1 == "manual.pdf"
    assert page.all("img") == []
    answer = here.get(page.links["Download the PDF"])
    assert (answer.mimetype, answer.get_data()) == ("application/pdf", made.PDF)
    assert answer.headers["Content-Disposition"].startswith("attachment")
    assert "sandbox" in answer.headers["Content-Security-Policy"]
    assert here.get("/homes/H1/files/F1/large").status_code == 404
    assert here.get("/homes/H1/spots/on/F1").status_code == 404
    assert stored().attachments[0].of == ()


REFUSED = {
    "empty": (b"", "The file is empty."),
    "svg": (made.SVG, "An SVG is not taken"),
    "gif": (made.picture(form="GIF"), "A GIF is not taken"),
    "page": (b"<!DOCTYPE html><script>x</script>", "This is a web page"),
    "text": (b"just words", "This is no picture and no PDF"),
    "program": (b"MZ\x90\0" * 99, "This is no picture and no PDF"),
    "cut off": (PICTURE[: len(PICTURE) // 2], "it is cut off or damaged"),
    "cut off PNG": (made.picture(form="PNG")[:-30], "it is cut off or damaged"),
    "nothing in it": (b"\xff\xd8\xff\xe0", "it is cut off or damaged"),
    "cut off PDF": (made.PDF[:40], "The PDF has no end"),
    "400 million": (made.bomb(20_000, 20_000), "far more pixels"),
    "144 million": (made.bomb(12_000, 12_000), "The picture has 144 million pixels"),
    "82 million": (made.bomb(8_200, 10_000), "The picture has 82 million pixels"),
    "with a PDF": (
        made.picture(comment=made.PDF), "This picture holds a second file inside."
    ),
    "with a ZIP": (
        PICTURE + b"PK\5\6" + b"\0" * 18, "This picture holds a second file inside."
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", REFUSED)
def test_what_is_not_taken_is_refused_in_a_sentence_and_what_was_typed_kept(
    here: CheckedClient, stored: Stored, config: Config, name: str
) -> None:
    data, sentence = REFUSED[name]
    page = sent(here, data, "sink.jpg", caption="By the sink")
    assert page.status == 422
    assert sentence in page.error("file")
    assert page.errors
    assert page.value("caption", "Add it") == "By the sink"
    assert page.value("of", "Add it") == "P1"
    assert stored().attachments == ()
    assert not config.files.exists()


def test_nothing_chosen_is_said(here: CheckedClient) -> None:
    page = here.submit(f"{NEW}?of=P1", {}, "Add it")
    assert page.error("file") == "Choose a photograph or a PDF."


def test_the_type_is_what_it_is_not_what_it_is_called(
    here: CheckedClient, stored: Stored
) -> None:
    added(here, made.picture(form="PNG"), name="report.pdf")
    assert stored().attachments[0].media_type == "image/png"
    answer = here.get("/homes/H1/files/F1/original")
    assert 'filename="H1-F1.png"' in answer.headers["Content-Disposition"]


@pytest.mark.parametrize(
    ("name", "kept"),
    [
        ("../../etc/passwd.jpg", "passwd.jpg"),
        ("<script>alert(1)</script>.jpg", "script>.jpg"),
        ("<img src=x onerror=alert(1)>.jpg", "<img src=x onerror=alert(1)>.jpg"),
        ("two\tlines\x1b.jpg", "two lines .jpg"),
        ("\u202egpj.exe", "gpj.exe"),
        ("x" * 300, "x" * 120),
    ],
)
def test_the_name_of_a_file_is_plain_text(
    here: CheckedClient, stored: Stored, name: str, kept: str
) -> None:
    page = added(here, name=name)
    assert stored().attachments[0].file_name == kept
    assert page.h1 == " ".join(kept.split())
    assert "<script>alert" not in page.response.get_data(as_text=True)
    assert "<img src=x" not in page.response.get_data(as_text=True)


def test_a_file_that_is_too_large_is_refused_by_its_page_alone(
    here: CheckedClient, stored: Stored
) -> None:
    large = PICTURE + b"\0" * (25 * 2**20)
    page = sent(here, large)
    assert page.status == 422
    assert "larger than 25 MB" in page.error("file")
    page = sent(here, large + b"\0" * 2**20)
    assert (page.status, page.h1) == (413, "This is too large")
    assert "A file may have 25 MB" in page.main
    assert "to be filled in again" in page.main
    form = here.see(page.links["Back to the form"])
    assert form.h1 == "Add a photograph or PDF"
    elsewhere = here.send("/homes/H1/points/P1/edit", {"note": "x" * 2**20})
    assert elsewhere.status == 413
    assert stored().attachments == ()


def test_a_heic_is_taken(here: CheckedClient, stored: Stored) -> None:
    from pillow_heif import from_pillow

    with Image.open(BytesIO(PICTURE)) as image:
        file = BytesIO()
        from_pillow(image).save(file)
    added(here, file.getvalue())
    assert stored().attachments[0].media_type == "image/heic"
    assert shown(here, "small")


def test_without_its_reader_a_heic_is_refused_with_what_to_do(
    here: CheckedClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("app.pictures.shown._reads_heic", lambda: False)
    heic = b"\0\0\0\x18ftypheic\0\0\0\0heicmif1" + b"\0" * 50
    page = sent(here, heic)
    assert page.status == 422
    assert "Let the camera take JPEG" in page.error("file")


def test_the_same_content_is_kept_once_and_it_is_said(
    here: CheckedClient, stored: Stored, config: Config
) -> None:
    added(here)
    page = added(here, of="P2")
    assert "This file was here already; it is kept once." in page.main
    [row] = stored().attachments
    assert row.of == ("P1", "P2")
    again = added(here, of="P2")
    assert (again.undo, "here already" in again.main) == ("", True)
    assert stored().attachments == (row,)
    assert len(files.digests_here(config.files)) == 1


def test_adding_is_undone_and_brought_back(
    here: CheckedClient, stored: Stored, config: Config
) -> None:
    page = added(here)
    undone = here.go_on(here.submit_on(page, {}, "Undo"))
    assert stored().attachments == ()
    assert here.get("/homes/H1/files/F1/small").status_code == 404
    files.clear_orphans(config.files, files.digests_in(config.database), time.time())
    assert undone.status == 200
    changes = here.see("/homes/H1/changes/")
    [token] = [
        values["token"][0]
        for form in changes.all("form")
        if (values := _values(form)) and "token" in values
    ][:1]
    here.go_on(here.send("/homes/H1/changes/undo", {"token": token}))
    assert stored().attachments
    assert shown(here, "large")


def _values(form: Any) -> dict[str, list[str]]:
    from tests.pages import values_of

    return values_of(form)


def test_what_is_said_of_it_is_changed_and_it_is_deleted(
    here: CheckedClient, stored: Stored
) -> None:
    added(here)
    edit = "/homes/H1/files/F1/edit"
    here.save(edit, caption="The tap", of_2="R1", private="yes", note="Old")
    [row] = stored().attachments
    assert (row.caption, row.of, row.private) == ("The tap", ("P1", "R1"), "yes")
    stale = here.see(edit)
    here.save(edit, note="Older")
    refused = here.submit_on(stale, note="Newer")
    assert refused.status == 409
    assert "This was changed since you opened it" in refused.main
    assert here.submit(edit, taken_on="yesterday").error("taken_on")
    page = here.save("/homes/H1/files/F1/delete", {}, "Delete")
    assert page.h1 == "Photographs and papers"
    assert stored().attachments == ()


def test_a_spot_is_marked_by_touching_the_picture(
    here: CheckedClient, stored: Stored
) -> None:
    page = added(here, made.picture(600, 400), of="B1")
    on = page.links["Mark a spot"]
    # Touched a quarter from the left and half way down, on the size of a phone.
    touched = touch(here, on, "at340", 85, 113, words="This way")
    assert touched.value("words") == "This way"
    assert (touched.value("across"), touched.value("down")) == ("250", "498")
    page = here.go_on(here.submit_on(touched, about="W1"))
    [spot] = stored().spots
    assert (spot.across, spot.down, spot.about) == (250, 498, "W1")
    assert page.links["Way 1, “SKTS”"] == "/homes/H1/devices/W1/"
    # The way itself shows the picture on which it is marked.
    assert "sink.jpg" in here.see("/homes/H1/devices/W1/").links
    moved = touch(here, f"/homes/H1/spots/{spot.ref}/edit", "at280", 279, 0)
    here.go_on(here.submit_on(moved, about=""))
    [spot] = stored().spots
    assert (spot.across, spot.down, spot.about, spot.words) == (
        996,
        0,
        None,
        "This way",
    )
    here.save(f"/homes/H1/spots/{spot.ref}/delete", {}, "Delete")
    assert stored().spots == ()


def touch(
    client: CheckedClient, url: str, name: str, x: int, y: int, **typed: str
) -> Page:
    """Send a form as a browser does whose picture is touched."""
    page = client.see(url)
    fields: dict[str, Any] = {**page.values(), **typed}
    return page_of(client.post(url, data={**fields, f"{name}.x": x, f"{name}.y": y}))


def test_a_picture_chosen_by_the_keyboard_is_marked_in_the_middle(
    here: CheckedClient,
) -> None:
    added(here)
    page = touch(here, "/homes/H1/spots/on/F1", "at560", 0, 0)
    assert (page.value("across"), page.value("down")) == ("500", "500")


@pytest.mark.parametrize(("x", "y"), [("", ""), ("-5", "3"), ("x", "1"), ("²", "3")])
def test_a_touch_that_is_none_is_no_spot(
    here: CheckedClient, stored: Stored, x: str, y: str
) -> None:
    added(here)
    page = touch(here, "/homes/H1/spots/on/F1", "at560", x, y)  # type: ignore[arg-type]
    assert page.status == 422
    assert page.error("across") == "Enter how far it is from the left."
    assert stored().spots == ()


def test_two_pictures_stand_beside_each_other(here: CheckedClient) -> None:
    added(here, caption="With the old tap")
    added(here, made.picture(seed=1), caption="With the new tap")
    url = "/homes/H1/files/compare"
    assert here.see(url).all("img") == []
    page = here.see(f"{url}?before=F1&after=F2")
    assert [image.get("alt") for image in page.all("img")] == [
        "With the old tap", "With the new tap",
    ]  # fmt: skip
    assert here.see(f"{url}?before=F1&after=F9").all("img") == []


def test_a_row_without_its_file_says_so_and_takes_the_file_again(
    here: CheckedClient, stored: Stored, config: Config
) -> None:
    added(here, caption="The tap")
    document = to_document(stored())
    for path in config.files.rglob("*"):
        if path.is_file():
            path.unlink()
    assert from_document(document.encode()).attachments == stored().attachments
    page = here.see("/homes/H1/files/F1/")
    assert "Its file is not here" in page.main
    assert "Its file is not here" in here.see("/homes/H1/points/P1/").main
    assert here.get("/homes/H1/files/F1/large").status_code == 404
    assert here.get("/homes/H1/files/F1/original").status_code == 404
    page = here.go_on(sent(here, PICTURE))
    assert (page.response.request.path, page.h1) == ("/homes/H1/files/F1/", "The tap")
    assert shown(here, "small")
    assert len(stored().attachments) == 1


def test_what_is_shown_is_made_anew_where_only_the_original_is(
    here: CheckedClient, config: Config
) -> None:
    added(here)
    before = shown(here, "small")
    for path in config.files.rglob("*.jpg"):
        path.unlink()
    assert shown(here, "small") == before


def test_the_walk_takes_a_photograph(here: CheckedClient, stored: Stored) -> None:
    page = here.see("/homes/H1/walk/rooms/R1")
    form, _ = page.form("Send the photograph")
    [file] = [e for e in form.iter("input") if e.get("type") == "file"]
    assert file.get("capture") == "environment"
    fields = {**_values(form), "of": "P1", "file": (BytesIO(PICTURE), "1.jpg")}
    page = here.go_on(page_of(here.post(form.get("action"), data=fields)))
    assert page.h1 == "Kitchen"
    assert page.undo.startswith("Added photograph 1.jpg (F1)")
    assert stored().attachments[0].of == ("P1",)


def with_pictures(many: int, of: str = "P1") -> Record:
    rows = tuple(
        b.Part(
            Attachment,
            {
                "ref": f"F{n}", "of": (of,), "sha256": f"{n:064x}", "size": 9,
                "media_type": "image/jpeg", "caption": f"Picture {n}",
            },
        )
        for n in range(1, many + 1)
    )  # fmt: skip
    spot = b.Part(Spot, {"ref": "L1", "attachment": "F1", "across": 1, "down": 1})
    fed = b.one_way(b.circuit("C1", b.socket("P1", room="R1")))
    return b.home(b.room("R1"), fed, *rows, spot)


def test_the_list_of_five_hundred_is_paged_and_asks_no_more_than_that_of_none(
    visitor: CheckedClient, app: Flask, keep: Callable[[Record], int]
) -> None:
    asked: list[str] = []
    engine = app.extensions["engine"]

    def count(*arguments: Any) -> None:
        asked.append(arguments[2])

    event.listen(engine, "before_cursor_execute", count)
    try:
        keep(with_pictures(500))
        visitor.see("/homes/H1/files/")
        many = len(asked)
        asked.clear()
        visitor.see("/homes/H1/points/P1/")
        on_its_page = len(asked)
    finally:
        event.remove(engine, "before_cursor_execute", count)
    assert max(many, on_its_page) < 40
    page = visitor.see("/homes/H1/files/")
    assert "1 to 48 of 500 shown." in page.main
    found: list[str] = []
    url: str | None = "/homes/H1/files/"
    while url:
        page = visitor.see(url)
        own = [u for u in page.links.values() if re.fullmatch(r".*/files/F\d+/", u)]
        assert len(own) <= ON_A_PAGE
        found += own
        url = page.links.get("Older ones")
    assert len(found) == len(set(found)) == 500
    assert found[0] == "/homes/H1/files/F500/"
    assert visitor.see("/homes/H1/files/?filter=picture 77").main.count("Picture 77")
    assert visitor.see("/homes/H1/files/?page=99").status == 200
    assert visitor.see("/homes/H1/files/?of=P1&page=2").links["Newer ones"]
    point = visitor.see("/homes/H1/points/P1/")
    assert "All 500 of them" in point.links
    assert len([u for u in point.links.values() if "/files/F" in u]) == MOST_ON_A_PAGE


def test_a_phone_gets_what_is_shown_and_no_original(
    here: CheckedClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    added(here)
    monkeypatch.setattr("app.web.pages.pictures.from_here", lambda: False)
    monkeypatch.setattr("app.web.pages.attachments.from_here", lambda: False)
    page = here.see("/homes/H1/files/F1/")
    assert "Download the original" not in page.links
    assert here.get("/homes/H1/files/F1/original").status_code == 403
    assert shown(here, "large")


def test_a_disk_that_takes_nothing_is_said_and_no_row_is_left(
    here: CheckedClient,
    stored: Stored,
    config: Config,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("app.store.files.os.fsync", full)
    page = sent(here, PICTURE, caption="Behind the boiler")
    assert page.status == 503
    assert "No space left on device" in page.error("file")
    assert page.value("caption", "Add it") == "Behind the boiler"
    assert stored().attachments == ()
    assert not [p for p in Path(config.files).rglob("*") if p.is_file()]
