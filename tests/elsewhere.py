"""A phone on the home network, as the program finds it: it has its own address."""

from __future__ import annotations

from typing import Any

from flask import Flask
from werkzeug.test import TestResponse

from tests.pages import CheckedClient

COMPUTER = "192.168.1.20"
PHONE = "192.168.1.77"
PORT = 5025


class PhoneClient(CheckedClient):
    """A client that comes from the network, and calls the program by its address."""

    host = f"{COMPUTER}:{PORT}"

    def open(self, *args: Any, **kwargs: Any) -> TestResponse:
        if args and isinstance(args[0], str):
            kwargs.setdefault("base_url", f"http://{self.host}/")
        return super().open(*args, **kwargs)


def phone_on(app: Flask, address: str = PHONE) -> PhoneClient:
    """Return a phone that has never been here."""
    client = PhoneClient(app)
    client.environ_base["REMOTE_ADDR"] = address
    return client
