"""Pairing a phone: the computer's page and the phone's, both looked at."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import Any

import pytest
from flask import Flask
from playwright.sync_api import Page, expect

from app.config import Config
from app.domain.record import Record
from app.web import create_app
from tests.browser.conftest import DESK, PHONE, Opens
from tests.browser.eye import faults_of
from tests.elsewhere import COMPUTER, PORT
from tests.elsewhere import PHONE as ITS_ADDRESS

FROM_THE_NETWORK = {"X-Of-The-Tests": "from the network"}


class Network:
    """Hands a request that says so on as one that a phone on the network sent."""

    def __init__(self, inner: Any) -> None:
        self.inner = inner

    def __call__(self, environ: dict[str, Any], start: Any) -> Iterable[bytes]:
        if "HTTP_X_OF_THE_TESTS" in environ:
            host = f"{COMPUTER}:{PORT}"
            environ |= {"REMOTE_ADDR": ITS_ADDRESS, "HTTP_HOST": host}
            if "HTTP_ORIGIN" in environ:
                environ["HTTP_ORIGIN"] = f"http://{host}"
            environ.pop("HTTP_SEC_FETCH_SITE", None)
        answer: Iterable[bytes] = self.inner(environ, start)
        return answer


@pytest.fixture
def app(config: Config) -> Flask:
    app = create_app(replace(config, port=PORT, shared_at=(COMPUTER,)))
    app.wsgi_app = Network(app.wsgi_app)  # type: ignore[assignment,method-assign]
    return app


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_a_phone_is_paired(
    opens: Opens, keep: Callable[[Record], int], demo: Record, size: dict[str, int]
) -> None:
    keep(demo)
    computer = opens(viewport=size)
    phone = opens(viewport=size, extra_http_headers=FROM_THE_NETWORK)
    found = []
    computer.goto("/phones/")
    found += faults_of(computer)
    computer.get_by_role("button", name="Show a code").click()
    code = " ".join(computer.locator(".pairing-code span").all_inner_texts())
    found += faults_of(computer)
    phone.goto("/homes/demo/")
    expect(phone).to_have_url("/pair")
    found += faults_of(phone)
    _enter(phone, "Hall phone", "1234")
    expect(phone.get_by_role("alert")).to_contain_text("The code is eight digits.")
    found += faults_of(phone)
    _enter(phone, "Hall phone", code)
    expect(phone.get_by_role("heading", level=1)).to_have_text(demo.home.name)
    computer.reload()
    expect(computer.get_by_role("button", name="Remove Hall phone")).to_be_visible()
    found += faults_of(computer)
    computer.get_by_role("button", name="Remove Hall phone").click()
    expect(computer.get_by_text("No phone is paired.")).to_be_visible()
    phone.reload()
    expect(phone.get_by_role("heading", level=1)).to_have_text("Pair this phone")
    assert found == []


def _enter(phone: Page, name: str, code: str) -> None:
    phone.get_by_label("Code").fill(code)
    phone.get_by_label("Name of this phone").fill(name)
    phone.get_by_role("button", name="Pair this phone").click()
