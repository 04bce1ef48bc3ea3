"""Handing over: nothing private goes along unless it is ticked."""

from __future__ import annotations

import io
import sqlite3
import zipfile
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from typing import Any, NoReturn

import pytest

from app.domain.record import Attachment, Record
from app.services import pack
from tests import builders as b
from tests.pages import CheckedClient

PAGE = "/homes/H1/hand-over/"


def test_what_leaves_the_house_is_counted_and_private_parts_stay(
    here: CheckedClient,
) -> None:
    page = here.see(PAGE)
    assert "2 rooms, 1 source, 3 items of the intake, 1 board, 4 devices" in page.main
    assert not [box for box in page.all("input") if box.get("checked") is not None]


def test_what_is_ticked_goes_with_the_button(here: CheckedClient) -> None:
    page = here.see(f"{PAGE}?with=notes")
    (ticked,) = [box for box in page.all("input") if box.get("checked") is not None]
    assert ticked.get("value") == "notes"
    sends = {b.get("formaction"): page.within(b, "form") for b in page.all("button")}
    form = sends[f"{PAGE}pack.zip"]
    assert form.get("method") == "get"
    assert ticked in list(form.iter("input"))


def test_a_file_marked_as_private_is_not_counted(
    visitor: CheckedClient, keep: Callable[[Record], int]
) -> None:
    rows = tuple(
        Attachment.model_validate(
            {
                "ref": f"F{n}",
                "sha256": f"{n}" * 64,
                "media_type": "image/jpeg",
                "size": 1,
                "private": "yes" if n == 1 else "no",
            }
        )
        for n in range(1, 7)
    )
    keep(b.home().having(attachments=rows))
    page = visitor.see(PAGE)
    assert "Photographs and other files (5 entries)" in page.main
    assert "Names of people (none recorded)" in page.main


def test_a_part_that_is_not_there_is_refused(here: CheckedClient) -> None:
    page = here.see(f"{PAGE}?with=secrets", 422)
    assert "There is no part “secrets”." in page.main


def test_the_log_goes_along_where_it_is_asked_for(here: CheckedClient) -> None:
    here.save("/homes/H1/points/P1/edit", place="by the hob")
    said = "Changed point Socket-outlet, size not noted, by the hob (P1)."
    assert said in here.get(f"{PAGE}pack.html?with=history").get_data(as_text=True)
    assert said not in here.get(f"{PAGE}pack.html").get_data(as_text=True)


def test_the_page_alone_waits_for_no_pdf(
    here: CheckedClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    def made(*_: object, **__: object) -> NoReturn:
        pytest.fail("made, though nobody asked for it")

    with monkeypatch.context() as patched:
        patched.setattr(pack, "as_pdf", made)
        patched.setattr(pack, "to_document", made)
        page = here.get(f"{PAGE}pack.html")
        assert (page.status_code, page.mimetype) == (200, "text/html")
    monkeypatch.setattr(pack, "templates", made)
    paper = here.get(f"{PAGE}pack.pdf")
    assert (paper.status_code, paper.mimetype) == (200, "application/pdf")


@pytest.mark.parametrize(
    ("name", "makes"),
    [("pack.pdf", "pack_pdf"), ("pack.html", "pack_page"), ("pack.zip", "pack_files")],
)
def test_others_can_save_while_a_pack_is_made(
    here: CheckedClient,
    database: Path,
    monkeypatch: pytest.MonkeyPatch,
    name: str,
    makes: str,
) -> None:
    def slow(_: pack.Wanted) -> Any:
        with closing(sqlite3.connect(database, timeout=0)) as other, other:
            other.execute("UPDATE home SET name = 'Meanwhile'")
        return {} if makes == "pack_files" else b"made"

    monkeypatch.setattr(f"app.web.pages.pack.{makes}", slow)
    assert here.get(f"{PAGE}{name}").status_code == 200
    assert "Meanwhile" in here.see("/homes/").main


def test_the_pack_is_given_as_a_file(here: CheckedClient) -> None:
    answer = here.get(f"{PAGE}pack.zip")
    assert answer.headers["Content-Disposition"] == 'attachment; filename="H1-pack.zip"'
    assert answer.headers["Cache-Control"] == "no-store"
    with zipfile.ZipFile(io.BytesIO(answer.get_data())) as archive:
        assert "H1-pack/pack.pdf" in archive.namelist()
