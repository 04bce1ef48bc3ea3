"""Other names, other sites, odd requests: over the real server, as bytes."""

from __future__ import annotations

import http.client
import shutil
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any, NoReturn

import pytest
from flask import Flask

from app.config import Config
from app.errors import AppError
from app.server import serve
from tests.attacks.served import serving, told


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory, spoiled: Config) -> Path:
    data = tmp_path_factory.mktemp("served")
    shutil.copytree(spoiled.data, data, dirs_exist_ok=True)
    return data


@pytest.fixture(scope="module")
def port(folder: Path) -> Iterator[int]:
    with serving(folder) as (port, _pid):
        yield port


def asked(port: int, *lines: str, path: str = "/homes/") -> bytes:
    head = "\r\n".join([f"GET {path} HTTP/1.1", *lines, "Connection: close", "", ""])
    return told(port, head.encode("latin-1"))


def status(answer: bytes) -> int:
    return int(answer.split(b" ", 2)[1])


@pytest.mark.parametrize(
    "hosts",
    [
        ["evil.example"], ["evil.example:{port}"], ["localhost.:{port}"],
        ["[::1]:{port}"], [""], ["127.0.0.1:{port}", "evil.example"],
        ["evil.example", "127.0.0.1:{port}"], ["127.0.0.1:{port}, evil.example"],
        ["0.0.0.0:{port}"], ["127.0.0.1.evil.example"],
    ],
)  # fmt: skip
def test_no_other_name_gets_a_page(port: int, hosts: list[str]) -> None:
    answer = asked(port, *(f"Host: {host.format(port=port)}" for host in hosts))
    assert status(answer) == 400
    assert b"document.title" not in answer


def test_no_header_stands_for_the_name(port: int) -> None:
    for name in ("X-Forwarded-Host", "Forwarded", "X-Host", "X-Original-URL"):
        own = f"127.0.0.1:{port}"
        answer = asked(port, "Host: evil.example", f"{name}: host={own}, {own}")
        assert status(answer) == 400
        answer = asked(port, f"Host: {own}", f"{name}: evil.example")
        assert b"evil.example/" not in answer.replace(b"http://evil.example/zq", b"")


def test_a_whole_address_in_the_request_line_is_no_way_round(port: int) -> None:
    sent = f"GET http://evil.example/homes/ HTTP/1.1\r\nHost: 127.0.0.1:{port}"
    answer = told(port, f"{sent}\r\nConnection: close\r\n\r\n".encode())
    # What the name in the line is does not matter: only our own host is answered.
    assert b"evil.example/homes" not in answer
    sent = "GET http://127.0.0.1/homes/ HTTP/1.1\r\nHost: evil.example"
    assert status(told(port, f"{sent}\r\nConnection: close\r\n\r\n".encode())) == 400


@pytest.mark.parametrize(
    "lines",
    [
        ["Content-Length: 5", "Content-Length: 6"],
        ["Content-Length: +5"], ["Content-Length: -1"], ["Content-Length: 5, 6"],
        ["Transfer-Encoding: xchunked"], ["Transfer-Encoding: chunked, identity"],
        ["Transfer-Encoding : chunked"], ["Content_Length: 5", "Content-Length: x"],
    ],
)  # fmt: skip
def test_a_second_request_is_not_smuggled_in(port: int, lines: list[str]) -> None:
    # A length beside chunks is read as chunks (RFC 9112, 6.3); what follows is then a
    # request like any other. With nothing in front of it, nobody reads it otherwise.
    body = f"0\r\n\r\nGET /homes/ HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n\r\n"
    head = ["POST /homes/new HTTP/1.1", f"Host: 127.0.0.1:{port}", *lines, "", body]
    answer = told(port, "\r\n".join(head).encode())
    assert b" 200 " not in answer
    assert b"document.title" not in answer


def test_a_long_head_and_a_large_body_are_refused(port: int) -> None:
    own = f"Host: 127.0.0.1:{port}"
    assert asked(port, own, f"X-Long: {'x' * 300_000}")[8:12] in (b"", b" 431")
    head = f"POST /homes/new HTTP/1.1\r\n{own}\r\nContent-Length: {2**40}\r\n\r\n"
    assert status(told(port, head.encode())) in (400, 413)


@pytest.mark.parametrize("method", ["PUT", "DELETE", "PATCH", "TRACE", "CONNECT", "X"])
def test_no_other_method_is_known(port: int, method: str) -> None:
    line = http.client.HTTPConnection("127.0.0.1", port, timeout=5)
    line.request(method, "/homes/")
    answer = line.getresponse()
    assert answer.status in (400, 405)
    assert b"document.title" not in answer.read()
    line.close()


def test_another_site_learns_nothing_and_frames_nothing(port: int) -> None:
    line = http.client.HTTPConnection("127.0.0.1", port, timeout=5)
    for method in ("GET", "OPTIONS"):
        headers = {
            "Origin": "http://evil.example",
            "Access-Control-Request-Method": "POST",
            "Access-Control-Request-Private-Network": "true",
        }
        line.request(method, "/homes/demo/", headers=headers)
        answer = line.getresponse()
        answer.read()
        given = {name.lower() for name, _ in answer.getheaders()}
        assert not [name for name in given if name.startswith("access-control")]
        assert "frame-ancestors 'none'" in (
            answer.getheader("Content-Security-Policy") or ""
        )
        assert answer.getheader("X-Frame-Options") == "DENY"
        assert answer.getheader("Cross-Origin-Opener-Policy") == "same-origin"
        assert answer.getheader("Cross-Origin-Resource-Policy") == "same-origin"
        assert answer.getheader("Server") in (None, "")
        assert answer.getheader("Cache-Control") == "no-store" or method == "OPTIONS"
    line.close()


def test_who_says_nothing_is_not_waited_for_long(
    config: Config, monkeypatch: pytest.MonkeyPatch
) -> None:
    given: dict[str, Any] = {}

    def created(_app: Flask, **limits: Any) -> NoReturn:
        given.update(limits)
        raise AppError("Far enough.")

    monkeypatch.setattr("app.server.waitress.create_server", created)
    with pytest.raises(AppError, match="Far enough"):
        serve(
            replace(config, port=0, shared_at=("127.0.0.2",)),
            open_browser=False,
            say=lambda _: None,
        )
    assert given["channel_timeout"] <= 30
    assert given["max_request_body_size"] <= 32 * 2**20
    assert given["connection_limit"] <= 200


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has other rights")
def test_what_the_program_keeps_is_its_owners_only(tmp_path: Path) -> None:
    data = tmp_path / "data"
    data.mkdir(mode=0o755)
    ways = [sys.executable, "-m", "app"]
    for command in (
        ["demo"],
        ["db", "backup"],
        ["db", "backup", f"{tmp_path}/a.sqlite3"],
    ):
        subprocess.run([*ways, *command, "--data", str(data)], check=True,
                       stdout=subprocess.DEVNULL, umask=0o022)  # fmt: skip
    with serving(data):
        pass
    files = [p for p in tmp_path.rglob("*") if p.is_file()]
    assert {p.name for p in files} >= {"key", "ways.log", "ways.sqlite3", "a.sqlite3"}
    assert {
        p.name: oct(p.stat().st_mode & 0o077) for p in files if p.stat().st_mode & 0o077
    } == {}
    assert oct((data / "copies").stat().st_mode & 0o777) == "0o700"
