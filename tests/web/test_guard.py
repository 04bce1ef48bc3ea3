"""Who may ask, what each answer forbids, and that looking at a page changes nothing."""

from __future__ import annotations

import re
import sqlite3
from collections import Counter
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any, cast
from urllib.parse import urlsplit

import pytest
from flask import Flask

from app.web import MOST_FORM_BYTES
from tests import photographs
from tests.pages import SVG, CheckedClient, Page, page_of

EDIT = "/homes/H1/points/P1/edit"
OWN = "http://localhost"
HEADERS = {
    "Content-Security-Policy": (
        "default-src 'self'; img-src 'self' data:; object-src 'none'; "
        "base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
    ),
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Referrer-Policy": "same-origin",
    "Permissions-Policy": "camera=(), microphone=(), geolocation=()",
}


def dump(database: Path) -> list[str]:
    connection = sqlite3.connect(database)
    try:
        return list(connection.iterdump())
    finally:
        connection.close()


@pytest.mark.parametrize(
    "host", ["127.0.0.1", "localhost", "127.0.0.1:5025", "localhost:1", "LOCALHOST"]
)
def test_the_names_of_this_machine_are_answered(here: CheckedClient, host: str) -> None:
    assert here.get("/homes/", headers={"Host": host}).status_code == 200


@pytest.mark.parametrize(
    "host",
    [
        "example.org",
        "example.org:5025",
        "127.0.0.1.example.org",
        "localhost.example.org",
        "127.0.0.1@example.org",
        "example.org@127.0.0.1",
        "user:word@localhost",
        "127.0.0.1/example.org",
        "127.0.0.1#.example.org",
        "127.0.0.1:example.org",
        "127.0.0.1:",
        "127.0.0.1 example.org",
        "localhost.",
        "127.0.0.2",
        "127.1",
        "2130706433",
        "0.0.0.0",  # noqa: S104
        "[::1]",
        "[",
        "192.168.1.10",
        "١٢٧.0.0.1",
    ],
)
@pytest.mark.parametrize("method", ["GET", "POST"])
def test_another_name_is_not_answered(
    here: CheckedClient, database: Path, host: str, method: str
) -> None:
    before = dump(database)
    environ = {"HTTP_HOST": host.encode().decode("latin-1")}
    answer = here.open("/homes/", method=method, environ_overrides=environ)
    assert answer.status_code == 400
    assert "A home" not in answer.get_data(as_text=True)
    assert dump(database) == before


def test_a_request_without_a_name_is_taken_for_what_the_server_is(
    here: CheckedClient,
) -> None:
    environ = {"HTTP_HOST": "", "SERVER_NAME": "192.168.1.10"}
    assert here.get("/homes/", environ_overrides=environ).status_code == 400


@pytest.mark.parametrize(
    "headers",
    [
        {"Origin": "http://example.org"},
        {"Origin": "null"},
        {"Origin": ""},
        {"Origin": "http://localhost:81"},
        {"Origin": "https://localhost"},
        {"Origin": "http://127.0.0.1"},
        {"Origin": "http://localhost.example.org"},
        {"Sec-Fetch-Site": "cross-site"},
        {"Sec-Fetch-Site": "same-site"},
        {"Sec-Fetch-Site": ""},
        {"Origin": OWN, "Sec-Fetch-Site": "cross-site"},
    ],
)
def test_a_form_from_elsewhere_is_not_taken_even_with_its_token(
    here: CheckedClient, database: Path, headers: dict[str, str]
) -> None:
    page = here.see("/homes/H1/new/rooms")
    fields = {name: values[0] for name, values in page.values().items()}
    before = dump(database)
    sent = here.send("/homes/H1/new/rooms", {**fields, "name": "x"}, headers)
    assert (sent.status, sent.h1) == (403, "This was not taken")
    assert dump(database) == before


@pytest.mark.parametrize(
    "headers",
    [{}, {"Origin": OWN}, {"Origin": OWN, "Sec-Fetch-Site": "same-origin"}],
)
def test_our_own_form_is_taken(here: CheckedClient, headers: dict[str, str]) -> None:
    page = here.see("/homes/H1/new/rooms")
    fields = {name: values[0] for name, values in page.values().items()}
    sent = here.send("/homes/H1/new/rooms", {**fields, "name": "x"}, headers)
    assert sent.status == 303


def filled(app: Flask, methods: str) -> Iterator[str]:
    """Yield an address for every route that takes one of some methods."""
    values = {"home": "H1", "ref": "P1", "plural": "points", "filename": "x", "key": 1}
    values["number"] = 1
    values |= {
        "code": "earthing-unknown",
        "subject": "H1",
        "slug": "flat-twin-and-earth",
        "token": "0" * 32,
        "job": "bath-fan",
        "due": "inspection",
    }
    adapter = app.url_map.bind("localhost")
    for rule in app.url_map.iter_rules():
        if rule.methods and methods in rule.methods:
            own = {name: values[name] for name in rule.arguments}
            yield adapter.build(rule.endpoint, own, method=methods)


def test_every_route_that_takes_a_form_refuses_one_from_elsewhere(
    here: CheckedClient, app: Flask, database: Path
) -> None:
    before = dump(database)
    urls = list(filled(app, "POST"))
    assert len(urls) > 10
    for url in urls:
        for headers in ({"Origin": "http://example.org"}, {"Origin": "null"}):
            assert here.send(url, {}, headers).status == 403, url
        assert here.post(url, data={}).status_code == 400, url
    assert dump(database) == before


def test_no_route_takes_another_method(app: Flask) -> None:
    methods = {m for rule in app.url_map.iter_rules() for m in rule.methods or ()}
    assert methods == {"GET", "HEAD", "OPTIONS", "POST"}


@pytest.mark.parametrize("token", [None, "", "x", "'\"", "x" * 5000])
def test_a_form_without_its_token_is_not_taken(
    here: CheckedClient, database: Path, token: str | None
) -> None:
    before = dump(database)
    page = here.submit(EDIT, csrf_token=token, note="x")
    assert page.status == 400
    assert "Go back, reload the page, and send it again." in page.main
    assert dump(database) == before


def test_a_token_of_another_browser_is_not_taken(
    here: CheckedClient, app: Flask, database: Path
) -> None:
    other = app.test_client()
    assert isinstance(other, CheckedClient)
    token = other.token()
    before = dump(database)
    assert here.submit(EDIT, csrf_token=token, note="x").status == 400
    assert dump(database) == before


def test_the_cookie_stays_here(here: CheckedClient) -> None:
    cookie = here.get("/import").headers["Set-Cookie"]
    assert cookie.startswith("ways=")
    assert {"HttpOnly", "SameSite=Lax", "Path=/"} <= set(cookie.split("; "))


def test_every_answer_forbids_itself_what_it_does_not_need(
    here: CheckedClient, own_app: Flask
) -> None:
    def break_down() -> str:
        raise RuntimeError

    own_app.add_url_rule("/break", view_func=break_down)
    here = cast("CheckedClient", own_app.test_client())
    answers = {
        200: here.get("/homes/"),
        303: here.submit(EDIT, note="x").response,
        302: here.get("/"),
        308: here.get("/homes/H1"),
        400: here.get("/", headers={"Host": "example.org"}),
        403: here.send(EDIT, {}, {"Origin": "null"}).response,
        404: here.get("/nowhere"),
        405: here.delete(EDIT),
        413: here.send(EDIT, {"note": "x" * MOST_FORM_BYTES}).response,
        422: here.submit(EDIT, count="x").response,
        500: here.get("/break"),
    }
    files = ["/homes/H1/document.json", "/static/css/base.css", "/static/nothing"]
    for status, answer in [*answers.items(), *((0, here.get(f)) for f in files)]:
        assert not status or answer.status_code == status
        for name, value in HEADERS.items():
            assert answer.headers.get_all(name) == [value], (status, name)
        assert "Access-Control-Allow-Origin" not in answer.headers
        if answer.mimetype == "text/html":
            assert answer.headers["Cache-Control"] == "no-store"
        answer.close()


def kind_of(app: Flask, url: str) -> str:
    """Return what sort of page an address is of."""
    path = urlsplit(url).path
    if path.startswith("/static/"):
        return "static"
    endpoint, values = app.url_map.bind("localhost").match(path)
    return f"{endpoint} {values.get('plural', '')} {'?' in url}"


def crawl(client: CheckedClient, start: str, most: int) -> dict[str, Page]:
    """Follow the links, to so many pages of each sort."""
    seen: dict[str, Page] = {}
    counts: Counter[str] = Counter()
    waiting = [start]
    while waiting:
        url = waiting.pop(0).partition("#")[0]
        kind = kind_of(client.application, url or "/")
        if not url or url in seen or counts[kind] >= most:
            continue
        counts[kind] += 1
        seen[url] = page_of(client.get(url, follow_redirects=True))
        assert seen[url].status == 200, url
        if seen[url].response.mimetype == "text/html":
            waiting += seen[url].links.values()
    return seen


def test_no_page_that_is_looked_at_writes(
    at_demo: CheckedClient, database: Path
) -> None:
    at_demo.save("/homes/demo/points/P1/edit", note="x")
    picture = {"file": (BytesIO(photographs.picture()), "x.jpg"), "of": "P1"}
    at_demo.go_on(at_demo.send("/homes/demo/files/new", picture))
    marked = {"across": "1", "down": "1", "words": "x"}
    at_demo.save("/homes/demo/spots/on/F1", marked)
    files = sorted(database.parent.rglob("*"))
    before, content = database.read_bytes(), dump(database)
    seen = crawl(at_demo, "/homes/demo/?done=1", 1)
    assert len(seen) > 35
    shown = {kind_of(at_demo.application, url).split()[0] for url in seen}
    reached = {rule.endpoint for rule in gets(at_demo.application)}
    assert reached - shown == {
        "homes.start", "ask.go", "search.index", "static", "labels.notices",
        "pairing.show", "documents.download", "pictures.small", "pictures.large",
        "replies.show", "pack.as_zip", "pack.as_pdf", "pack.as_html",
        "spreadsheets.columns", "spreadsheets.preview",
    }  # fmt: skip
    assert database.read_bytes() == before
    assert dump(database) == content
    assert sorted(database.parent.rglob("*")) == files


def gets(app: Flask) -> list[Any]:
    return [r for r in app.url_map.iter_rules() if r.methods and "GET" in r.methods]


HOSTILE = [
    "javascript:alert(1)",
    "//example.org/",
    "https://example.org/",
    "\"><script>alert(1)</script>'",
    "../../../../etc/passwd",
    "\r\nSet-Cookie: a=b",
    "\x00",
    "{{ 911 * 977 }}",
    "x" * 3000,
]
ARGUMENTS = (
    "back", "done", "away", "aside", "lit", "q", "filter", "sort", "ref", "copy",
    "after", "kind", "board", "room", "point", "tied_to", "controlled", "ways",
    "seen_on", "note", "next", "url", "home", "plural", "_scheme", "_external",
    "_anchor", "_method", "endpoint", "at", "nation", "place",
)  # fmt: skip


@pytest.mark.parametrize("value", HOSTILE, ids=range(len(HOSTILE)))
def test_a_hostile_address_ends_in_no_link(
    here: CheckedClient, app: Flask, value: str
) -> None:
    query = dict.fromkeys(ARGUMENTS, value)
    for url in filled(app, "GET"):
        answer = here.get(url, query_string=query)
        assert answer.status_code in (200, 302, 400, 404, 422), url
        place = answer.headers.get("Location", "/")
        assert re.match(r"/(?!/)|http://localhost/", place), place
        assert "a=b" not in answer.headers.get("Set-Cookie", "")
        text = answer.get_data().decode(errors="replace")
        assert "<script>alert" not in text
        assert "890047" not in text
        if answer.mimetype == "text/html" and answer.status_code != 302:
            for link in page_of(answer).all("a", f"{SVG}a"):
                assert "example.org" not in link.get("href", "")


@pytest.mark.parametrize("value", HOSTILE[:4], ids=range(4))
def test_a_hostile_address_leads_nowhere_after_saving(
    here: CheckedClient, value: str
) -> None:
    for argument in ("back", "after", "board", "copy"):
        page = here.see("/homes/H1/new/points")
        query = {argument: value}
        fields = {name: values[0] for name, values in page.values().items()}
        fields |= {"kind": "light", "ref": f"P-{argument}"}
        answer = here.post("/homes/H1/new/points", data=fields, query_string=query)
        assert answer.status_code == 303
        assert answer.headers["Location"].startswith("/homes/H1/points/P-")


@pytest.mark.parametrize(
    "path",
    [
        "//example.org/",
        "//example.org/homes",
        "/homes//H1",
        "/homes/H1//rooms/",
        "/%2e%2e/%2e%2e/etc/passwd",
        "/static/../app/web/guard.py",
        "/static/%2e%2e/%2e%2e/pyproject.toml",
        "/static/..%2f..%2fpyproject.toml",
        "/static//etc/passwd",
        "/homes/%00/",
        "/homes/H1%00/",
        "/homes/H1/rooms/%3Cscript%3Ealert(1)%3C%2Fscript%3E/",
        "/homes/%FF/",
        "/homes/%ED%A0%80/",
        "/homes/H1/rooms/R1/;x=y",
        "/homes/h1/",
        f"/homes/{'x' * 9000}/",
        "/homes/H1/devices/../edit",
        "/homes/H1/new/__class__",
        "/homes/H1/ ",
        "/\\example.org",
    ],
)
def test_an_odd_path_leads_nowhere(here: CheckedClient, path: str) -> None:
    environ = {"PATH_INFO": raw(path)}
    answer = here.get("/", environ_overrides=environ)
    assert answer.status_code in (302, 308, 400, 404)
    place = answer.headers.get("Location", "/")
    assert re.match(r"/(?!/)|http://localhost/", place), place
    assert "<script>alert" not in answer.get_data(as_text=True)
    assert "root:" not in answer.get_data(as_text=True)


def raw(path: str) -> str:
    """Return a path as a server hands it on: its escapes read as bytes."""
    return re.sub("%([0-9A-Fa-f]{2})", lambda m: chr(int(m[1], 16)), path)
