"""Guessing the pairing code over the real server, from many addresses at once."""

from __future__ import annotations

import re
import threading
from collections import Counter
from collections.abc import Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from http.client import HTTPConnection
from http.cookies import SimpleCookie
from typing import Any
from urllib.parse import urlencode

import pytest
import waitress
from flask import Flask

from app.config import Config
from app.server import SHARED_LIMITS
from app.services.pairing import LASTS_S, MOST_WRONG, Pairing
from app.web import create_app
from app.web.paired import COOKIE
from tests.elsewhere import COMPUTER, PORT

TOKEN = re.compile(r'name="csrf_token" type="hidden" value="([^"]+)"')
BY = "X-Of-The-Tests"


class Addresses:
    """Hands a request on as one from the address on the network that it names."""

    def __init__(self, inner: Any) -> None:
        self.inner = inner

    def __call__(self, environ: dict[str, Any], start: Any) -> Iterable[bytes]:
        environ["REMOTE_ADDR"] = environ.pop(f"HTTP_{BY.upper().replace('-', '_')}")
        environ["HTTP_HOST"] = f"{COMPUTER}:{PORT}"
        answer: Iterable[bytes] = self.inner(environ, start)
        return answer


@pytest.fixture
def app(config: Config) -> Flask:
    return create_app(replace(config, port=PORT, shared_at=(COMPUTER,)))


@pytest.fixture
def pairing(app: Flask) -> Pairing:
    pairing: Pairing = app.extensions["pairing"]
    return pairing


@pytest.fixture
def port(app: Flask) -> Iterator[int]:
    server = waitress.create_server(
        Addresses(app), host="127.0.0.1", port=0, threads=4, ident=None, **SHARED_LIMITS
    )
    done = threading.Event()

    def run() -> None:
        while not done.is_set():
            server.asyncore.loop(timeout=0.05, map=server._map, count=1)

    thread = threading.Thread(target=run)
    thread.start()
    yield int(server.effective_port)
    done.set()
    thread.join(5)
    server.task_dispatcher.shutdown(timeout=5)
    # Whoever still holds a line open is let go, and the listener with them.
    server.asyncore.close_all(server._map)


class Guesser:
    """A phone that has its form open, and sends codes."""

    def __init__(self, port: int, address: str) -> None:
        self.port, self.address = port, address
        _, text, cookie = self.asks("GET", "/pair", "")
        found = TOKEN.search(text)
        assert found is not None
        self.token, self.cookie = found[1], cookie

    def asks(self, method: str, path: str, cookie: str, body: str = "") -> Any:
        line = HTTPConnection("127.0.0.1", self.port, timeout=20)
        headers = {BY: self.address, "Cookie": cookie}
        headers["Content-Type"] = "application/x-www-form-urlencoded"
        line.request(method, path, body=body, headers=headers)
        answer = line.getresponse()
        text = answer.read().decode()
        jar: SimpleCookie = SimpleCookie()
        for given in answer.headers.get_all("Set-Cookie") or ():
            jar.load(given)
        line.close()
        pairs = "; ".join(f"{name}={morsel.value}" for name, morsel in jar.items())
        return answer.status, text, pairs

    def guesses(self, code: str) -> tuple[int, str]:
        fields = {"csrf_token": self.token, "code": code, "name": f"at {self.address}"}
        status, _, given = self.asks("POST", "/pair", self.cookie, urlencode(fields))
        return status, given


def together(guessers: list[Guesser], codes: list[str]) -> list[tuple[int, str]]:
    """Send every code at one moment, as far as threads can."""
    ready = threading.Barrier(len(guessers))

    def go(pair: tuple[Guesser, str]) -> tuple[int, str]:
        ready.wait(10)
        return pair[0].guesses(pair[1])

    with ThreadPoolExecutor(len(guessers)) as pool:
        return list(pool.map(go, zip(guessers, codes, strict=True)))


def wrong(code: str, number: int) -> str:
    return f"{(int(code) + 1 + number) % 10**8:08}"


def test_the_right_code_of_many_phones_at_once_lets_one_in(
    port: int, pairing: Pairing
) -> None:
    code = pairing.new_code().digits
    guessers = [Guesser(port, f"192.168.1.{30 + n}") for n in range(8)]
    answers = together(guessers, [code] * len(guessers))
    assert Counter(status for status, _ in answers)[303] == 1
    assert sum(COOKIE in given for _, given in answers) == 1
    assert pairing.code() is None


def test_many_addresses_at_once_guess_no_more_often_than_one_limit(
    port: int, pairing: Pairing
) -> None:
    code = pairing.new_code().digits
    count = MOST_WRONG + 12
    guessers = [Guesser(port, f"192.168.2.{1 + n}") for n in range(count)]
    answers = together(guessers, [wrong(code, n) for n in range(count)])
    assert {status for status, _ in answers} <= {422, 429}
    lock = pairing.lock()
    assert lock is not None
    assert lock.everywhere
    # The code is gone with the lock: even the right one comes too late.
    assert Guesser(port, "192.168.3.1").guesses(code)[0] in (422, 429)
    assert pairing.code() is None


def test_one_address_in_parallel_is_slowed_as_if_one_by_one(
    port: int, pairing: Pairing
) -> None:
    code = pairing.new_code().digits
    guesser = Guesser(port, "192.168.4.1")
    codes = [wrong(code, n) for n in range(7)] + [code]
    answers = together([guesser] * len(codes), codes)
    # Whichever came first: the right code is in, or too soon and counted as wrong.
    right = [status for status, _ in answers].count(303)
    assert right == int(pairing.code() is None and pairing.lock() is None)
    # Of those that were wrong, nearly all came too soon to be looked at.
    assert [status for status, _ in answers].count(422) <= 4


def test_a_code_is_taken_no_longer_than_it_says(config: Config) -> None:
    now = [1000.0]
    pairing = Pairing(clock=lambda: now[0])
    code = pairing.new_code().digits
    now[0] += LASTS_S + 1
    assert pairing.code() is None
    assert pairing.take(code, "192.168.1.9") is not None


def test_the_code_goes_by_a_clock_that_nobody_sets() -> None:
    import time

    assert Pairing()._clock is time.monotonic


@pytest.mark.parametrize("code", ["", "1" * 9000, "１２３４５６７８", "%00", "'--"])
def test_an_odd_code_lets_nobody_in(port: int, pairing: Pairing, code: str) -> None:
    pairing.new_code()
    assert Guesser(port, "192.168.5.1").guesses(code)[0] in (413, 422, 429)
    assert pairing.code() is not None
