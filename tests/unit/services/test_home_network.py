from __future__ import annotations

import socket
from collections.abc import Callable
from typing import Any

import pytest

from app.errors import InvalidError
from app.services.home_network import is_home, own_addresses


@pytest.mark.parametrize(
    ("address", "home"),
    [
        ("192.168.1.20", True),
        ("10.0.0.7", True),
        ("172.16.3.4", True),
        ("169.254.10.11", True),
        ("127.0.0.1", False),
        ("127.0.0.2", False),
        ("0.0.0.0", False),  # noqa: S104
        ("224.0.0.251", False),
        ("255.255.255.255", False),
        ("240.0.0.1", False),
        ("8.8.8.8", False),
        ("100.64.0.1", False),
        ("fd00::2", False),
        ("example.org", False),
        ("192.168.1.20/24", False),
        ("", False),
    ],
)
def test_only_an_address_of_a_home_is_one(address: str, *, home: bool) -> None:
    assert is_home(address) is home


@pytest.fixture
def routes(monkeypatch: pytest.MonkeyPatch) -> Callable[[dict[str, str]], list[Any]]:
    """Let the system answer so; returns what was done with the sockets."""

    def use(table: dict[str, str]) -> list[Any]:
        done: list[Any] = []

        class Socket(socket.socket):
            def connect(self, place: Any) -> None:
                done.append(("connect", place[0]))
                if place[0] not in table:
                    raise OSError
                self.own = table[place[0]]

            def getsockname(self) -> Any:
                return (self.own, 1)

            def send(self, *_: Any) -> int:
                raise AssertionError

            def sendto(self, *_: Any) -> int:
                raise AssertionError

        monkeypatch.setattr("app.services.home_network.socket.socket", Socket)
        return done

    return use


def test_each_address_is_named_once_and_the_internets_are_not(
    routes: Callable[[dict[str, str]], list[Any]],
) -> None:
    table = {
        "203.0.113.1": "192.168.1.20",
        "192.168.1.1": "192.168.1.20",
        "10.0.0.1": "10.8.0.2",
        "172.16.0.1": "81.2.69.142",
    }
    done = routes(table)
    assert own_addresses() == ("192.168.1.20", "10.8.0.2")
    assert {what for what, _ in done} == {"connect"}


def test_without_a_network_it_is_said(
    routes: Callable[[dict[str, str]], list[Any]],
) -> None:
    routes({"203.0.113.1": "127.0.0.1"})
    with pytest.raises(InvalidError, match="no address on a home network"):
        own_addresses()
