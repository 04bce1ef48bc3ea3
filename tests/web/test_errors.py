"""Errors are pages: a sentence, what can be done, a reference that the log knows."""

from __future__ import annotations

import logging
import re
import sqlite3
from collections.abc import Iterator
from pathlib import Path
from typing import Any, cast

import pytest
from flask import Flask

from app.store import engine
from app.web import MOST_FORM_BYTES
from tests.pages import CheckedClient, page_of

EDIT = "/homes/H1/points/P1/edit"


def test_a_page_that_is_not_there(here: CheckedClient) -> None:
    page = here.see("/nowhere", 404)
    assert page.h1 == "There is no such page"
    assert here.see(page.links["Go to your homes"]).h1 == "Homes"
    assert page.main.count("reference") == 0


@pytest.mark.parametrize("url", ["/homes/H1/points/P9/", "/homes/H1/nowhere"])
def test_an_error_within_a_home_leads_back_into_it(
    here: CheckedClient, url: str
) -> None:
    links = here.see(url, 404).links
    assert here.see(links["See the changes"]).h1 == "Changes"
    assert f"Go to {here.see('/homes/H1/').h1}" in links
    for elsewhere in ("/homes/H9/nowhere", "/nowhere/H1"):
        assert "See the changes" not in here.see(elsewhere, 404).links


def test_what_is_undone_twice_leads_back_into_the_home(here: CheckedClient) -> None:
    page = here.save(EDIT, note="x")
    here.submit_on(page, press="Undo")
    again = here.submit_on(page, press="Undo")
    assert again.status == 409
    assert "See the changes" in again.links


def test_an_error_within_a_home_keeps_its_places(here: CheckedClient) -> None:
    page = here.see("/homes/H1/points/P9/", 404)
    assert "There is no point “P9” in this home." in page.main
    assert page.links["Rooms"] == "/homes/H1/rooms/"


@pytest.mark.parametrize("method", ["DELETE", "PUT", "PATCH"])
def test_a_method_that_is_not_taken(here: CheckedClient, method: str) -> None:
    page = page_of(here.open(EDIT, method=method))
    assert (page.status, page.h1) == (405, "This cannot be done here")
    assert page.response.headers["Allow"] == "GET, HEAD, OPTIONS, POST"


def test_a_form_that_is_only_looked_for(here: CheckedClient) -> None:
    assert here.see("/homes/H1/sources/answer", 405).h1 == "This cannot be done here"


def test_a_form_that_is_too_large(here: CheckedClient) -> None:
    page = here.send(EDIT, {"note": "x" * MOST_FORM_BYTES})
    assert (page.status, page.h1) == (413, "This is too large")
    assert "larger than a page of this program ever is" in page.main
    assert page.links["Back to the form"] == EDIT


@pytest.mark.parametrize(
    ("url", "form", "limit"),
    [
        ("/homes/H1/spreadsheet?kind=points", None, "A spreadsheet may have 5 MB"),
        ("/like-another", None, "A document may have 8 MB"),
        ("/import", None, "A document may have 8 MB, a pack with its photographs 128"),
        ("/homes/H1/files/new?of=P1", None, "A file may have 25 MB"),
        (
            "/homes/H1/corrections/file",
            "/homes/H1/corrections/",
            "What comes back may have 8 MB",
        ),
    ],
)
def test_a_file_that_is_too_large_leads_back_to_its_form(
    here: CheckedClient, url: str, form: str | None, limit: str
) -> None:
    answer = here.post(
        url,
        content_type="multipart/form-data; boundary=edge",
        environ_overrides={"CONTENT_LENGTH": str(200 * 2**20)},
    )
    page = page_of(answer)
    assert page.status == 413
    assert limit in page.main
    assert page.links["Back to the form"] == (form or url)
    here.see(page.links["Back to the form"])
    assert ("See the changes" in page.links) == url.startswith("/homes/")


def test_a_form_with_endless_parts_is_refused(here: CheckedClient) -> None:
    parts = [f'--edge\r\nContent-Disposition: form-data; name="{n}"\r\n\r\n\r\n'
             for n in range(30_000)]  # fmt: skip
    body = ("".join(parts) + "--edge--\r\n").encode()
    kind = "multipart/form-data; boundary=edge"
    page = page_of(here.post(EDIT, data=body, content_type=kind))
    assert page.status == 413


@pytest.mark.parametrize(
    ("body", "kind"),
    [
        (b"{}", "application/json"),
        (b"\xff\xfe=%zz&&&=", "application/x-www-form-urlencoded"),
        (b"--x", "multipart/form-data; boundary=edge"),
        (b"", "multipart/form-data"),
        (b"csrf_token", "text/plain"),
        (b"x", "nonsense"),
    ],
)
def test_what_is_no_form_is_refused(
    here: CheckedClient, body: bytes, kind: str
) -> None:
    page = page_of(here.post(EDIT, data=body, content_type=kind))
    assert page.status == 400


@pytest.fixture
def broken(own_app: Flask, here: CheckedClient) -> CheckedClient:
    def break_down() -> str:
        raise RuntimeError("the word of the bug")

    own_app.add_url_rule("/break", view_func=break_down, methods=["GET", "POST"])
    return cast("CheckedClient", own_app.test_client())


def test_a_bug_is_a_page_with_a_reference_that_the_log_knows(
    broken: CheckedClient, caplog: pytest.LogCaptureFixture
) -> None:
    with caplog.at_level(logging.ERROR):
        page = broken.see("/break", 500)
    assert page.h1 == "Something went wrong"
    found = re.search(r"give the reference ([0-9a-f]{8})\.", page.main)
    assert found is not None
    text = page.response.get_data(as_text=True)
    for word in ("RuntimeError", "Traceback", "the word of the bug", ".py"):
        assert word not in text
    [record] = [r for r in caplog.records if found[1] in r.getMessage()]
    assert record.getMessage() == f"{found[1]}: GET /break"
    assert record.exc_info is not None
    assert record.name == "app.web.errors"


def test_the_log_holds_nothing_of_a_form(
    broken: CheckedClient, caplog: pytest.LogCaptureFixture
) -> None:
    with caplog.at_level(logging.DEBUG):
        assert broken.send("/break", {"note": "our secret"}).status == 500
        broken.submit(EDIT, note="our secret")
    assert "our secret" not in caplog.text.replace("\n", "")


@pytest.fixture
def impatient(monkeypatch: pytest.MonkeyPatch) -> None:
    """Wait for a locked file for a moment only."""
    monkeypatch.setattr(engine, "WAIT_S", 0.02)


@pytest.fixture
def other(impatient: None, here: CheckedClient, database: Path) -> Iterator[Any]:
    """Another program, which holds the file."""
    connection = sqlite3.connect(database, isolation_level=None)
    connection.execute("BEGIN IMMEDIATE")
    yield connection
    connection.close()


def test_a_file_that_is_held_is_said_and_nothing_is_lost(
    other: Any, here: CheckedClient, caplog: pytest.LogCaptureFixture
) -> None:
    opened = here.see(EDIT)
    page = here.submit_on(opened, note="x")
    assert page.status == 503
    assert page.h1 == "The file cannot be written just now"
    assert "could not be read or written: database is locked." in page.main
    assert "Nothing was changed." in page.main
    found = re.search(r"give the reference ([0-9a-f]{8})\.", page.main)
    assert found is not None
    assert found[1] in caplog.text
    other.execute("ROLLBACK")
    assert "Note x" in here.go_on(here.submit_on(opened, note="x")).main


@pytest.mark.parametrize("sql", ["query_only", "max_page_count"])
def test_a_file_that_may_not_be_written_is_said(
    here: CheckedClient,
    monkeypatch: pytest.MonkeyPatch,
    caplog: pytest.LogCaptureFixture,
    sql: str,
) -> None:
    """As on a read-only disk, and as on one that is full."""
    values = {"query_only": "1", "max_page_count": "1"}
    connect = sqlite3.connect

    def limited(*args: object, **kwargs: object) -> sqlite3.Connection:
        connection: sqlite3.Connection = connect(*args, **kwargs)  # type: ignore[call-overload]
        connection.execute(f"PRAGMA {sql} = {values[sql]}")
        return connection

    monkeypatch.setattr(sqlite3, "connect", limited)
    long = "x" * 3900
    page = here.submit(EDIT, note=long)
    assert page.status == 503
    reason = {"query_only": "readonly database", "max_page_count": "disk is full"}
    assert reason[sql] in page.main
    assert "See that the disk is not full" in page.main
    assert long not in caplog.text


def test_a_file_that_was_taken_away_is_said_and_not_made_anew(
    here: CheckedClient, database: Path
) -> None:
    database.rename(database.with_suffix(".away"))
    assert "unable to open database file" in here.see("/homes/", 503).main
    assert not database.exists()
    database.with_suffix(".away").rename(database)
    assert "A home" in here.see("/homes/H1/").h1


def test_a_file_that_is_gone_is_said(here: CheckedClient, database: Path) -> None:
    database.rename(database.with_suffix(".away"))
    database.mkdir()
    page = here.see("/homes/", 503)
    assert "unable to open database file" in page.main
