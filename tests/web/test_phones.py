"""Phones on the home network: pairing, guessing, what is seen before and after."""

from __future__ import annotations

import logging
import re
import sqlite3
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from http.cookies import SimpleCookie
from pathlib import Path

import pytest
from flask import Flask, Response

from app.config import Config
from app.domain.record import Record
from app.services.pairing import MOST_WRONG, MOST_WRONG_FROM_ONE
from app.web import create_app
from app.web.paired import COOKIE, PAIRING_FILES, device_name
from app.web.rounds_view import person
from tests.elsewhere import COMPUTER, PHONE, PORT, PhoneClient, phone_on
from tests.pages import CheckedClient, Page, page_of, text_of
from tests.web.test_guard import dump, filled

CODE = re.compile(r"\b([0-9]{4}) ([0-9]{4})\b")
PAIR = "Pair this phone"
FROM_THERE = f"http://{COMPUTER}:{PORT}"


@pytest.fixture
def shared_app(config: Config) -> Flask:
    """A program that phones may reach."""
    app = create_app(replace(config, port=PORT, shared_at=(COMPUTER,)))
    app.test_client_class = CheckedClient
    return app


@pytest.fixture
def computer(
    shared_app: Flask, keep: Callable[[Record], int], small: Record
) -> CheckedClient:
    """A browser on the computer itself; a home is there."""
    keep(small)
    client = shared_app.test_client()
    assert isinstance(client, CheckedClient)
    return client


@pytest.fixture
def phone(computer: CheckedClient, shared_app: Flask) -> PhoneClient:
    return phone_on(shared_app)


def shown_code(computer: CheckedClient) -> str:
    """Have a code shown on the computer; return its digits."""
    found = CODE.search(computer.save("/phones/", press=press(computer)).main)
    assert found is not None
    return found[1] + found[2]


def press(computer: CheckedClient) -> str:
    buttons = computer.get("/phones/").get_data(as_text=True)
    return "Show another code" if "Show another code" in buttons else "Show a code"


def pair(computer: CheckedClient, phone: PhoneClient, name: str = "Hall phone") -> Page:
    code = shown_code(computer)
    return phone.submit("/pair", press=PAIR, code=code, name=name)


def guess(phone: PhoneClient, code: str) -> Page:
    return phone.submit("/pair", press=PAIR, code=code, name="X")


def noted(app: Flask, ask: Callable[[], str]) -> list[str]:
    """Have something asked at the end of each request; return the answers."""
    said: list[str] = []

    def note(response: Response) -> Response:
        said.append(ask())
        return response

    app.after_request_funcs.setdefault(None, []).append(note)
    return said


def other_than(code: str) -> str:
    return f"{(int(code) + 1) % 10**8:08}"


def test_a_phone_is_paired_and_then_shown_everything(
    computer: CheckedClient, phone: PhoneClient
) -> None:
    assert phone.get("/").headers["Location"] == "/pair"
    assert phone.see("/").h1 == "Pair this phone"
    done = pair(computer, phone)
    assert (done.status, done.location) == (303, "/")
    assert phone.see("/").h1 == "A home"
    assert phone.save("/homes/H1/points/P1/edit", note="x").status == 200
    assert "Hall phone" in computer.see("/phones/").main


def test_the_pass_stays_on_the_phone(
    computer: CheckedClient, phone: PhoneClient
) -> None:
    said = pair(computer, phone).response.headers.getlist("Set-Cookie")
    (cookie,) = [text for text in said if text.startswith(f"{COOKIE}=")]
    assert {"HttpOnly", "SameSite=Lax", "Path=/"} <= set(cookie.split("; "))
    assert "Domain" not in cookie
    assert COOKIE != "ways"


def test_a_code_is_typed_as_it_is_read(
    computer: CheckedClient, phone: PhoneClient
) -> None:
    code = shown_code(computer)
    assert guess(phone, f" {code[:4]} - {code[4:]} ").status == 303


def test_a_code_works_once(computer: CheckedClient, shared_app: Flask) -> None:
    code = shown_code(computer)
    assert guess(phone_on(shared_app), code).status == 303
    second = phone_on(shared_app, "192.168.1.78")
    refused = guess(second, code)
    assert refused.status == 422
    assert "not the code that the computer shows now" in refused.main
    assert second.get("/homes/").headers["Location"] == "/pair"


def test_a_code_serves_still_when_the_phone_could_not_be_written_down(
    computer: CheckedClient,
    phone: PhoneClient,
    database: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    code = shown_code(computer)
    with monkeypatch.context() as patched:
        patched.setattr("app.store.engine.WAIT_S", 0)
        with closing(sqlite3.connect(database)) as other:
            other.execute("BEGIN IMMEDIATE")
            assert guess(phone, code).status == 503
    assert guess(phone, code).status == 303


def test_a_phone_is_never_called_as_the_computer_is(
    computer: CheckedClient, phone: PhoneClient
) -> None:
    computer.save("/phones/", press="Save", name="Study")
    assert pair(computer, phone, "study").status == 303
    assert "study 2" in computer.see("/phones/").main


def test_a_wrong_code_is_said_beside_it_and_what_was_typed_is_kept(
    computer: CheckedClient, phone: PhoneClient
) -> None:
    wrong = other_than(shown_code(computer))
    page = phone.submit("/pair", press=PAIR, code=wrong, name="Ann’s")
    assert page.status == 422
    assert "Wait 1 second" in page.main
    assert page.by_id["code"].get("value") == wrong
    assert page.by_id["name"].get("value") == "Ann’s"
    again = phone.submit("/pair", press=PAIR, code=wrong, name="Ann’s")
    assert again.status == 429
    assert "too soon" in again.main
    assert again.response.headers["Retry-After"] == "2"


@pytest.mark.parametrize(
    ("code", "name", "sentence"),
    [
        ("", "X", "Enter the code that the computer shows."),
        ("1234", "X", "The code is eight digits."),
        ("١٢٣٤٥٦٧٨", "X", "The code is eight digits."),
        ("12345678", "", "Enter a name"),
        ("12345678", "   ", "Enter a name"),
        ("12345678", "x" * 41, "at most 40 characters"),
        ("12345678", "\x07", "Enter a name"),
        ("12345678", "This Computer", "Use another."),
    ],
)
def test_what_cannot_be_taken_is_said_and_costs_no_try(
    computer: CheckedClient, phone: PhoneClient, code: str, name: str, sentence: str
) -> None:
    right = shown_code(computer)
    for _ in range(MOST_WRONG):
        page = phone.submit("/pair", press=PAIR, code=code, name=name)
        assert page.status == 422
        assert sentence in page.main
    assert guess(phone, right).status == 303


def test_guessing_from_one_phone_is_locked_and_the_computer_lifts_it(
    computer: CheckedClient, phone: PhoneClient
) -> None:
    code = shown_code(computer)
    for _ in range(MOST_WRONG_FROM_ONE):
        guess(phone, other_than(code))
    assert guess(phone, code).status == 429
    assert f"came from {PHONE}" in computer.see("/phones/").main
    assert guess(phone, shown_code(computer)).status == 303
    assert PHONE not in computer.see("/phones/").main


def test_a_script_of_a_thousand_guesses_does_not_get_in(
    computer: CheckedClient, shared_app: Flask, database: Path
) -> None:
    code = int(shown_code(computer))
    before = dump(database)
    phones = [phone_on(shared_app, f"192.168.1.{n}") for n in range(100, 110)]
    forms = [p.see("/pair").values(PAIR) for p in phones]
    statuses = []
    for n in range(1000):
        at = n % 10
        typed = f"{(code + 1 + n) % 10**8:08}"
        fields = {name: values[0] for name, values in forms[at].items()}
        fields |= {"code": typed, "name": "X"}
        statuses.append(phones[at].post("/pair", data=fields).status_code)
    assert set(statuses) == {422, 429}
    assert statuses.count(422) <= 10
    assert "the code was withdrawn" in computer.see("/phones/").main
    assert guess(phones[0], f"{code:08}").status == 429
    assert dump(database) == before
    assert guess(phones[0], shown_code(computer)).status == 303


def test_an_unpaired_phone_sees_nothing(
    computer: CheckedClient, phone: PhoneClient, shared_app: Flask, database: Path
) -> None:
    before = dump(database)
    token = phone.see("/pair").values(PAIR)["csrf_token"][0]
    for method in ("GET", "POST"):
        urls = [u for u in filled(shared_app, method) if u != "/pair"]
        assert len(urls) > 15
        urls += ["/nowhere", "/homes/H1/nowhere"]
        for url in (*urls, "/homes/H1", "/homes/H1/document.json"):
            answer = phone.open(url, method=method, data={"csrf_token": token})
            text = answer.get_data(as_text=True)
            if answer.status_code == 302:
                assert answer.headers["Location"] == "/pair", url
            else:
                assert answer.status_code == 403, url
            for word in ("A home", "H1", "Kitchen", "Main board", "Version"):
                assert word not in text.replace(url, ""), (url, word)
    assert dump(database) == before


@pytest.mark.parametrize("method", ["HEAD", "OPTIONS", "DELETE", "PUT", "TRACE"])
def test_no_other_method_tells_an_unpaired_phone_more(
    phone: PhoneClient, method: str
) -> None:
    for url in ("/homes/", "/homes/H1/", "/phones/", "/nowhere"):
        answer = phone.open(url, method=method)
        assert answer.status_code == (302 if method == "HEAD" else 403)
        assert "Allow" not in answer.headers


def test_an_unpaired_phone_has_the_files_of_its_one_page(
    computer: CheckedClient, phone: PhoneClient, shared_app: Flask
) -> None:
    page = phone.see("/pair")
    links = [e.get("href").partition("?")[0] for e in page.all("link")]
    assert {f"/static/{name}" for name in PAIRING_FILES} == set(links)
    assert page.all("script", "a")[1:] == []
    assert shared_app.static_folder is not None
    folder = Path(shared_app.static_folder)
    for path in (p for p in folder.rglob("*") if p.is_file()):
        name = path.relative_to(folder).as_posix()
        answer = phone.get(f"/static/{name}")
        assert answer.status_code == (200 if name in PAIRING_FILES else 403), name
        answer.close()
    for odd in ("css/../js/main.js", "css/nothing.css", "css//tokens.css"):
        assert phone.get(f"/static/{odd}").status_code in (302, 403)


def test_a_removed_phone_sees_nothing_more_at_once(
    computer: CheckedClient, phone: PhoneClient, shared_app: Flask
) -> None:
    pair(computer, phone)
    other = phone_on(shared_app, "192.168.1.78")
    pair(computer, other, "Tablet")
    form = phone.see("/homes/H1/points/P1/edit")
    assert computer.save("/phones/", press="Remove Hall phone").h1 == "Phones"
    assert "Hall phone" not in computer.see("/phones/").main
    assert phone.get("/homes/H1/").headers["Location"] == "/pair"
    answer = phone.submit_on(form, note="x")
    assert (answer.status, answer.h1) == (403, "Pair this phone")
    assert "was removed there. Nothing was taken." in answer.main
    assert other.see("/homes/H1/").h1 == "A home"


def test_a_script_of_a_removed_phone_is_told_in_its_own_form(
    computer: CheckedClient, phone: PhoneClient
) -> None:
    answer = phone.post("/homes/H1/delete", headers={"Accept": "application/json"})
    assert answer.status_code == 403
    assert answer.json is not None
    assert "Nothing was taken" in answer.json["sentence"]


def test_removing_what_is_not_there_is_said(computer: CheckedClient) -> None:
    for token in ("", "7", "x", "9" * 40, "٣"):
        assert computer.send("/phones/remove", {"token": token}).status == 404


def test_a_paired_phone_pairs_and_removes_none(
    computer: CheckedClient, phone: PhoneClient
) -> None:
    pair(computer, phone)
    code = shown_code(computer)
    for url in ("/phones/", "/phones/nothing"):
        assert phone.get(url).status_code in (403, 404)
    page = phone.see("/import")
    token = page.values("Bring it in")["csrf_token"][0]
    for url in ("/phones/code", "/phones/remove"):
        sent = phone.post(url, data={"csrf_token": token, "token": "1"})
        assert sent.status_code == 403
        assert "Hall phone" not in sent.get_data(as_text=True)
    assert "/phones/" not in [*page.links.values()]
    assert phone.get("/pair").headers["Location"] == "/"
    sent = phone.post("/pair", data={"csrf_token": token, "code": code, "name": "B"})
    assert sent.headers["Location"] == "/"
    assert "Hall phone" in computer.see("/phones/").main
    assert code[:4] in computer.see("/phones/").main


@pytest.mark.parametrize(
    "host",
    [
        "localhost:5025", "127.0.0.1:5025", "example.org", f"{COMPUTER}", "[::1]:5025",
        f"{COMPUTER}:5026", f"{COMPUTER}:5025.example.org", "192.168.1.21:5025",
        f"{COMPUTER}.example.org:5025", f"x@{COMPUTER}:5025", "3232235796:5025",
    ],
)  # fmt: skip
def test_a_paired_phone_calls_the_computer_by_its_address(
    computer: CheckedClient, phone: PhoneClient, host: str
) -> None:
    pair(computer, phone)
    cookie = phone.get_cookie(COOKIE, domain=COMPUTER)
    assert cookie is not None
    for url in ("/homes/", "/pair", "/static/css/base.css"):
        answer = phone.get(
            url,
            environ_overrides={"HTTP_HOST": host},
            headers={"Cookie": f"{COOKIE}={cookie.value}"},
        )
        assert answer.status_code == 400
        assert "A home" not in answer.get_data(as_text=True)


def test_the_computer_is_not_called_by_its_address_on_the_network(
    computer: CheckedClient,
) -> None:
    assert computer.get("/homes/", base_url=FROM_THERE).status_code == 400


@pytest.mark.parametrize(
    "headers",
    [
        {"Origin": "http://example.org"},
        {"Origin": "null"},
        {"Origin": f"http://{COMPUTER}"},
        {"Origin": "http://localhost:5025"},
        {"Origin": f"https://{COMPUTER}:5025"},
        {"Sec-Fetch-Site": "cross-site"},
    ],
)
def test_a_form_from_another_site_is_not_taken_from_a_paired_phone(
    computer: CheckedClient, phone: PhoneClient, headers: dict[str, str], database: Path
) -> None:
    pair(computer, phone)
    page = phone.see("/homes/H1/new/rooms")
    fields = {name: values[0] for name, values in page.values().items()}
    before = dump(database)
    answer = phone.post("/homes/H1/new/rooms", data=fields, headers=headers)
    assert answer.status_code == 403
    assert dump(database) == before
    own = {"Origin": FROM_THERE}
    answer = phone.post(
        "/homes/H1/new/rooms", data={**fields, "name": "x"}, headers=own
    )
    assert answer.status_code == 303


@pytest.mark.parametrize(
    "header",
    ["X-Forwarded-For", "X-Real-IP", "Forwarded", "X-Forwarded-Host", "Client-IP",
     "X-Client-IP", "True-Client-IP", "X-Remote-Addr", "Remote-Addr"],
)  # fmt: skip
def test_no_header_says_where_a_request_comes_from(
    phone: PhoneClient, header: str
) -> None:
    for value in ("127.0.0.1", "localhost", "for=127.0.0.1", "::1"):
        answer = phone.get("/homes/", headers={header: value})
        assert answer.headers["Location"] == "/pair"


@pytest.mark.parametrize(
    "address", ["", "::ffff:192.168.1.77", "x", "fe80::1", "10.0.0.1"]
)
def test_an_odd_address_is_elsewhere(shared_app: Flask, address: str) -> None:
    answer = phone_on(shared_app, address).get("/homes/")
    assert answer.headers["Location"] == "/pair"


def test_without_sharing_nobody_is_let_in_from_elsewhere(
    computer: CheckedClient, phone: PhoneClient, own_app: Flask
) -> None:
    pair(computer, phone)
    cookie = phone.get_cookie(COOKIE, domain=COMPUTER)
    assert cookie is not None
    alone = phone_on(own_app)
    for host in (f"{COMPUTER}:{PORT}", "localhost", "127.0.0.1:5025"):
        answer = alone.get(
            "/homes/",
            environ_overrides={"HTTP_HOST": host},
            headers={"Cookie": f"{COOKIE}={cookie.value}"},
        )
        assert answer.status_code == 400
    here = own_app.test_client()
    assert isinstance(here, CheckedClient)
    page = here.see("/phones/")
    assert "it answers to this computer only" in page.main
    assert "Hall phone" in page.main
    assert here.send("/phones/code", {}).status == 422


def test_a_change_carries_by_whom_it_is_made(
    computer: CheckedClient, phone: PhoneClient, shared_app: Flask
) -> None:
    pair(computer, phone, "Ann’s phone")
    said = noted(shared_app, device_name)
    phone.get("/homes/")
    computer.get("/homes/")
    assert said == ["Ann’s phone", "this computer"]


def test_when_a_phone_was_seen_is_kept_but_rarely(
    computer: CheckedClient,
    phone: PhoneClient,
    database: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    pair(computer, phone)
    before = database.read_bytes()
    phone.see("/homes/H1/")
    assert database.read_bytes() == before
    monkeypatch.setattr("app.web.paired.was_seen_lately", lambda *_: False)
    assert phone.see("/homes/H1/").h1 == "A home"
    assert phone.save("/homes/H1/points/P1/edit", note="x").status == 200
    # A file that may not be written is still read.
    monkeypatch.setattr("app.store.engine.WAIT_S", 0)
    with closing(sqlite3.connect(database)) as other:
        other.execute("BEGIN IMMEDIATE")
        assert phone.see("/homes/H1/").h1 == "A home"


def test_nothing_of_codes_and_passes_is_logged_or_stored(
    computer: CheckedClient,
    phone: PhoneClient,
    database: Path,
    caplog: pytest.LogCaptureFixture,
) -> None:
    caplog.set_level(logging.DEBUG)
    code = shown_code(computer)
    guess(phone, other_than(code))
    computer.save("/phones/", press="Show another code")
    answer = pair(computer, phone).response
    cookie = SimpleCookie("; ".join(answer.headers.getlist("Set-Cookie")))
    phone.get("/nowhere")
    phone.get("/homes/H1/")
    for secret in (code, other_than(code), cookie[COOKIE].value):
        assert secret not in caplog.text
        assert secret.encode() not in database.read_bytes()
    for url in (answer.headers["Location"], phone.get("/pair").headers["Location"]):
        assert "?" not in url


def test_the_page_for_the_computer_says_what_the_network_can_see(
    computer: CheckedClient, phone: PhoneClient
) -> None:
    page = computer.see("/phones/")
    assert FROM_THERE in page.main
    assert "Nothing is encrypted" in page.main
    assert "Nothing is encrypted" in phone.see("/pair").main
    codes = [e for e in page.root.iter() if e.get("class") == "qr"]
    assert [e.get("aria-label") for e in codes] == [f"QR code of {FROM_THERE}/"]


def test_a_page_that_pairs_is_kept_by_no_browser(
    computer: CheckedClient, phone: PhoneClient
) -> None:
    for answer in (computer.get("/phones/"), phone.get("/pair")):
        assert answer.headers["Cache-Control"] == "no-store"
    assert page_of(phone.get("/pair")).by_id["code"].get("value") == ""


def test_the_log_of_changes_names_the_phone(
    computer: CheckedClient, phone: PhoneClient
) -> None:
    pair(computer, phone, "Ann’s phone")
    computer.save("/homes/H1/points/P1/edit", note="x")
    phone.save("/homes/H1/points/P2/edit", note="y")
    newest, older = computer.see("/homes/H1/changes/").all("small")[:2]
    assert text_of(newest).endswith(", from Ann’s phone")
    assert "from" not in text_of(older)


def test_a_phone_marks_rounds_under_its_own_name(
    computer: CheckedClient, phone: PhoneClient, shared_app: Flask
) -> None:
    pair(computer, phone, "Ann’s phone")
    said = noted(shared_app, person)
    phone.get("/homes/")
    assert said == ["Ann’s phone"]
