"""Sharing with phones, by the real program on this machine's own addresses."""

from __future__ import annotations

import contextlib
import http.client
import os
import re
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import urlencode, urlsplit

import pytest
from click.testing import CliRunner

from app.cli import main
from app.errors import InvalidError
from app.services.home_network import own_addresses

WAYS = [sys.executable, "-m", "app"]
CODE = re.compile(r"\b(?:<span>)?([0-9]{4})(?:</span>)? (?:<span>)?([0-9]{4})\b")
TOKEN = re.compile(r'name="csrf_token" type="hidden" value="([^"]+)"')
Answer = tuple[int, str, http.client.HTTPMessage]


def own_address() -> str | None:
    try:
        return own_addresses()[0]
    except InvalidError:
        return None


class Browser:
    """A browser that keeps its cookies and follows nothing by itself."""

    def __init__(self, host: str, port: int) -> None:
        self.host, self.port = host, port
        self.cookies: dict[str, str] = {}

    def ask(
        self,
        path: str,
        fields: Mapping[str, str] | None = None,
        headers: Mapping[str, str] = {},
    ) -> Answer:
        connection = http.client.HTTPConnection(self.host, self.port, timeout=20)
        cookies = "; ".join(f"{name}={value}" for name, value in self.cookies.items())
        sent = {"Cookie": cookies, **headers}
        if fields is None:
            connection.request("GET", path, headers=sent)
        else:
            kind = {"Content-Type": "application/x-www-form-urlencoded"}
            connection.request("POST", path, urlencode(fields), sent | kind)
        with contextlib.closing(connection), connection.getresponse() as answer:
            for cookie in answer.headers.get_all("Set-Cookie") or ():
                name, _, value = cookie.partition(";")[0].partition("=")
                self.cookies[name] = value
            return answer.status, answer.read().decode(), answer.headers

    def send(self, page: str, path: str, fields: Mapping[str, str] = {}) -> Answer:
        """Send a form with the token of a page."""
        token = TOKEN.search(self.ask(page)[1])
        assert token is not None
        return self.ask(path, {"csrf_token": token[1], **fields})


@pytest.fixture
def data(tmp_path: Path) -> Path:
    """A data folder with a home in it."""
    folder = tmp_path / "data"
    result = CliRunner().invoke(main, ["demo", "--data", str(folder)])
    assert result.exit_code == 0, result.output
    return folder


@contextmanager
def shared(*arguments: str, last: str) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """Serve and share; give the program and what it said up to a last line."""
    with subprocess.Popen(
        [*WAYS, "serve", "--no-open", "--share", "--port", "0", *arguments],
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        env=os.environ | {"PYTHONUNBUFFERED": "1"},
    ) as child:
        assert child.stdout is not None
        said = ""
        for line in child.stdout:
            said += line
            if line.startswith(last):
                break
        try:
            yield child, said
        finally:
            child.kill()


def new_code(here: Browser) -> str:
    assert here.send("/phones/", "/phones/code")[0] == 303
    found = CODE.search(here.ask("/phones/")[1])
    assert found is not None
    return found[1] + found[2]


def test_a_phone_is_paired_over_the_network(data: Path) -> None:
    address = own_address()
    if address is None:
        with shared("--data", str(data), last="Error") as (child, said):
            assert "has no address on a home network" in said
            assert child.wait(20) == 1
        return
    with shared("--data", str(data), last="Ctrl+C") as (child, said):
        assert "Nothing is encrypted" in said
        assert CODE.search(said) is None
        urls = [urlsplit(url) for url in re.findall(r"http://\S+/(?=\s)", said)]
        port = urls[0].port or 0
        assert (address, port) in [(url.hostname, url.port) for url in urls]
        secrets = _pair_and_try(Browser("127.0.0.1", port), Browser(address, port))
        child.send_signal(signal.SIGTERM)
        assert child.stdout is not None
        rest = child.stdout.read()
        if os.name != "nt":
            assert child.wait(20) == 0
            assert rest == "Ended.\n"
    kept = [path.read_bytes() for path in data.rglob("*") if path.is_file()]
    assert (data / "ways.log").is_file()
    for secret in secrets:
        assert secret not in said + rest
        assert not [1 for content in kept if secret.encode() in content]


def _pair_and_try(here: Browser, phone: Browser) -> list[str]:
    """Go through a phone's life; return all that nobody else may learn."""
    for headers in ({}, {"X-Forwarded-For": "127.0.0.1"}, {"Forwarded": "for=[::1]"}):
        status, text, said = phone.ask("/homes/demo/", headers=headers)
        assert (status, said["Location"]) == (302, "/pair")
        assert "emo" not in text
    for browser, other in ((here, phone), (phone, here)):
        name = {"Host": f"{other.host}:{here.port}"}
        assert browser.ask("/pair", headers=name)[0] == 400
    code = new_code(here)
    wrong = f"{(int(code) + 1) % 10**8:08}"
    assert _enter(phone, wrong)[0] == 422
    time.sleep(1.1)
    assert _enter(phone, code)[0] == 303
    assert phone.ask("/homes/demo/")[0] == 200
    assert phone.ask("/phones/")[0] == 403
    assert "Hall phone" in here.ask("/phones/")[1]
    secrets = [code, wrong, phone.cookies["ways-phone"]]
    assert here.send("/phones/", "/phones/remove", {"token": "1"})[0] == 303
    assert phone.ask("/homes/demo/")[2]["Location"] == "/pair"
    return secrets


def _enter(phone: Browser, code: str) -> Answer:
    return phone.send("/pair", "/pair", {"code": code, "name": "Hall phone"})


def test_a_thousand_guesses_over_the_network_are_locked_out(data: Path) -> None:
    address = own_address()
    if address is None:
        assert CliRunner().invoke(main, ["serve", "--share"]).exit_code == 1
        return
    with shared("--data", str(data), last="Ctrl+C") as (_, said):
        port = int(re.findall(r":(\d+)/", said)[0])
        here, phone = Browser("127.0.0.1", port), Browser(address, port)
        code = int(new_code(here))
        token = TOKEN.search(phone.ask("/pair")[1])
        assert token is not None
        fields = {"csrf_token": token[1], "name": "X"}
        statuses = [
            phone.ask("/pair", {**fields, "code": f"{(code + n) % 10**8:08}"})[0]
            for n in range(1, 1001)
        ]
        assert set(statuses) == {422, 429}
        assert statuses.count(422) == 1
        assert f"came from {address}" in here.ask("/phones/")[1]
        assert _enter(phone, f"{code:08}")[0] == 429
        assert "ways-phone" not in phone.cookies


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such terminals")
def test_a_terminal_shows_the_code_and_the_address_to_scan(data: Path) -> None:
    import pty

    if own_address() is None:
        assert CliRunner().invoke(main, ["serve", "--share"]).exit_code == 1
        return
    leader, follower = pty.openpty()
    with subprocess.Popen(
        [*WAYS, "serve", "--no-open", "--share", "--port", "0", "--data", str(data)],
        stdout=follower,
        stderr=follower,
        env=os.environ | {"PYTHONIOENCODING": "utf-8"},
    ) as child:
        os.close(follower)
        try:
            said = _until(leader, "Ctrl+C ends it.")
        finally:
            child.terminate()
            child.wait(20)
            os.close(leader)
    assert "▄▄▄▄▄" in said
    assert "\x1b[97m\x1b[40m" in said
    found = CODE.search(said)
    assert found is not None
    assert found[1] + found[2] not in (data / "ways.log").read_text("utf-8")


def _until(terminal: int, end: str) -> str:
    said = b""
    while end not in said.decode("utf-8", "replace"):
        said += os.read(terminal, 4096)
    return said.decode("utf-8", "replace")


def test_without_share_the_network_is_not_listened_to(data: Path) -> None:
    address = own_address() or "127.0.0.2"
    with subprocess.Popen(
        [*WAYS, "serve", "--no-open", "--port", "0", "--data", str(data)],
        stdout=subprocess.PIPE,
        text=True,
        env=os.environ | {"PYTHONUNBUFFERED": "1"},
    ) as child:
        assert child.stdout is not None
        said = "".join(child.stdout.readline() for _ in range(3))
        try:
            assert "It answers to this machine only." in said
            port = int(re.findall(r":(\d+)/", said)[0])
            assert Browser("127.0.0.1", port).ask("/homes/demo/")[0] == 200
            with pytest.raises(ConnectionRefusedError):
                socket.create_connection((address, port), timeout=5)
        finally:
            child.kill()


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["--share", "--address", "8.8.8.8"], "is no address of a home network"),
        (["--share", "--address", "127.0.0.1"], "is no address of a home network"),
        (["--share", "--address", "0.0.0.0"], "is no address of a home network"),  # noqa: S104
        (["--share", "--address", "192.168.213.99"], "Nothing is shared."),
        (["--address", "192.168.1.20"], "add --share"),
    ],
)
def test_what_cannot_be_shared_is_said(
    data: Path, arguments: list[str], sentence: str
) -> None:
    result = subprocess.run(
        [*WAYS, "serve", "--no-open", "--port", "0", "--data", str(data), *arguments],
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
    assert result.returncode in (1, 2)
    assert sentence in result.stderr
    assert "Traceback" not in result.stderr
