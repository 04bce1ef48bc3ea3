"""What is private stands in no log, no error page, no address, and no other site's."""

from __future__ import annotations

import logging
import re
import subprocess
import sys
import urllib.error
import urllib.request
from collections.abc import Callable
from dataclasses import replace
from http.cookies import SimpleCookie
from pathlib import Path
from typing import cast
from urllib.parse import urlsplit

import pytest
from flask import Flask

from app.config import Config
from app.domain.record import Record
from app.services.pairing import Pairing
from app.web import create_app
from app.web.paired import COOKIE
from tests.attacks.served import serving, told
from tests.elsewhere import COMPUTER, PORT, phone_on
from tests.pages import CheckedClient, Page

WORDS = "the key lies under the zq stone"


@pytest.fixture
def shared_app(config: Config, keep: Callable[[Record], int], demo: Record) -> Flask:
    keep(demo)
    app = create_app(replace(config, port=PORT, shared_at=(COMPUTER,)))
    app.test_client_class = CheckedClient
    return app


def test_no_address_of_a_page_holds_a_pass_a_token_or_a_code(
    shared_app: Flask,
) -> None:
    pairing: Pairing = shared_app.extensions["pairing"]
    code = pairing.new_code().digits
    phone = phone_on(shared_app)
    done = phone.submit("/pair", press="Pair this phone", code=code, name="X")
    jar: SimpleCookie = SimpleCookie()
    for given in done.response.headers.getlist("Set-Cookie"):
        jar.load(given)
    token = phone.see("/homes/demo/points/P1/edit").value("csrf_token")
    for path in ("/homes/", "/homes/demo/", "/homes/demo/points/P1/edit"):
        page = phone.see(path)
        leads = [e.get(n) for e in page.root.iter() for n in ("href", "src", "action")]
        for address in filter(None, leads):
            assert not any(s in address for s in (code, token, jar[COOKIE].value))
        assert page.response.headers["Referrer-Policy"] == "same-origin"
        assert jar[COOKIE].value not in page.response.get_data(as_text=True)


def test_a_pass_of_a_removed_phone_is_worth_nothing_at_once(
    shared_app: Flask,
) -> None:
    pairing: Pairing = shared_app.extensions["pairing"]
    phone = phone_on(shared_app)
    code = pairing.new_code().digits
    phone.submit("/pair", press="Pair this phone", code=code, name="Hall phone")
    assert phone.get("/homes/demo/").status_code == 200
    computer = cast("CheckedClient", shared_app.test_client())
    computer.save("/phones/", press="Remove Hall phone")
    for path in ("/homes/demo/", "/homes/demo/document.json", "/homes/demo/house/"):
        assert phone.get(path).headers["Location"] == "/pair"
    assert phone.post("/homes/demo/new/points", data={}).status_code in (400, 403)


def test_a_failure_shows_and_logs_nothing_of_what_was_sent(
    shared_app: Flask, caplog: pytest.LogCaptureFixture
) -> None:
    def fail(home: str) -> str:
        raise RuntimeError

    shared_app.view_functions["search.index"] = fail
    client = shared_app.test_client()
    client.set_cookie("zq", "cookie-of-the-tests")
    with caplog.at_level(logging.INFO):
        answer = client.get("/homes/demo/search/", query_string={"q": WORDS})
    assert answer.status_code == 500
    text = answer.get_data(as_text=True)
    for private in (
        WORDS,
        "cookie-of-the-tests",
        "Traceback",
        "RuntimeError",
        "/app/",
    ):
        assert private not in text
    assert "RuntimeError" in caplog.text
    assert "cookie-of-the-tests" not in caplog.text
    assert "stone" not in caplog.text


def test_the_log_of_the_real_program_is_without_anything_private(
    tmp_path: Path,
) -> None:
    data = tmp_path / "data"
    ways = [sys.executable, "-m", "app", "demo", "--data", str(data)]
    subprocess.run(ways, check=True, stdout=subprocess.DEVNULL)
    with serving(data) as (port, _pid):
        own = f"http://127.0.0.1:{port}"
        with urllib.request.urlopen(f"{own}/homes/demo/new/rooms") as answer:  # noqa: S310
            cookie = answer.headers["Set-Cookie"].partition(";")[0]
            found = re.search(
                r'name="csrf_token" type="hidden" value="([^"]+)',
                answer.read().decode(),
            )
        assert found is not None
        body = f"csrf_token={found[1]}&name={WORDS.replace(' ', '+')}&note=zq"
        head = f"POST /homes/demo/new/rooms HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n"
        head += f"Cookie: {cookie}\r\nContent-Length: {len(body)}\r\n"
        head += "Content-Type: application/x-www-form-urlencoded\r\n"
        told(port, f"{head}Connection: close\r\n\r\n{body}".encode())
        told(port, f"GET /?q=%0d%0a2026+WARNING HTTP/1.1\r\n{cookie}\r\n\r\n".encode())
        told(port, b"\x16\x03\x01\x1b[2J\r\n\r\n")
    log = (data / "ways.log").read_text("utf-8")
    key = (data / "key").read_bytes()
    for private in (WORDS, "zq stone", cookie.partition("=")[2], found[1], key.hex()):
        assert private not in log
    lines = log.splitlines()
    assert lines
    assert all(
        re.match(r"\d{4}-\d\d-\d\d \d\d:\d\d:\d\d,\d{3} [A-Z]+ ", li) for li in lines
    )


def test_no_page_leads_elsewhere_with_where_one_was(seen: dict[str, Page]) -> None:
    for page in seen.values():
        if page.response.mimetype != "text/html":
            continue
        assert page.response.headers["Cache-Control"] == "no-store"
        for link in page.all("a", "form", "link", "img"):
            for name in ("href", "action", "src"):
                assert not urlsplit(link.get(name) or "").netloc
