"""A desk and a phone: two ways to sit before the program, both watched."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from flask import Flask
from jinja2 import FileSystemBytecodeCache
from playwright.sync_api import Browser, BrowserContext, Page, Request, ViewportSize

from app.config import DATABASE, Config
from app.domain.record import Record
from app.services.demo_pictures import with_pictures
from app.services.homes import add_home
from app.store.engine import make_engine, writing
from app.web import create_app
from tests.browser.keys import Keys
from tests.conftest import serving

DESK = ViewportSize(width=1280, height=800)
PHONE = ViewportSize(width=390, height=844)
# The browser itself says so in the console when a form is refused; it is no fault.
REFUSED = ("status of 404", "status of 409", "status of 422")


class Watch:
    """What a browser said or sent that it should not have."""

    def __init__(self, context: BrowserContext) -> None:
        self.found: list[str] = []
        context.on("console", lambda message: self._said(message.type, message.text))
        context.on("weberror", lambda error: self.found.append(str(error.error)))
        context.on("request", self._sent)

    def _said(self, kind: str, text: str) -> None:
        if kind in ("error", "warning") and not any(word in text for word in REFUSED):
            self.found.append(text)

    def _sent(self, request: Request) -> None:
        url = urlsplit(request.url)
        if url.scheme != "data" and url.hostname != "127.0.0.1":
            self.found.append(request.url)


@pytest.fixture(scope="session")
def compiled(tmp_path_factory: pytest.TempPathFactory) -> FileSystemBytecodeCache:
    """Templates compiled once for all tests."""
    return FileSystemBytecodeCache(str(tmp_path_factory.mktemp("compiled")))


@pytest.fixture(autouse=True)
def _compiled_once(app: Flask, compiled: FileSystemBytecodeCache) -> None:
    app.jinja_env.bytecode_cache = compiled


Opens = Callable[..., Page]


@pytest.fixture
def opens(chromium: Browser, live_url: str) -> Iterator[Opens]:
    """Open pages on the program; at the end nothing may have gone wrong in any."""
    watches, contexts = [], []

    def page(**settings: object) -> Page:
        # Without motion a scroll is over as soon as it is asked for.
        context = chromium.new_context(
            base_url=live_url,
            reduced_motion="reduce",
            **settings,  # type: ignore[arg-type]
        )
        context.set_default_timeout(10_000)
        watches.append(Watch(context))
        contexts.append(context)
        return context.new_page()

    yield page
    for context in contexts:
        context.close()
    assert [found for watch in watches for found in watch.found] == []


@pytest.fixture
def desk(opens: Opens) -> Page:
    return opens(viewport=DESK)


@pytest.fixture
def phone(opens: Opens) -> Page:
    """A phone whose browser runs no script."""
    return opens(viewport=PHONE, has_touch=True, java_script_enabled=False)


@pytest.fixture
def contexts(chromium: Browser) -> Iterator[Callable[[], BrowserContext]]:
    """Phones that may lose their program: what their browsers say of it is no fault."""
    made: list[BrowserContext] = []

    def make() -> BrowserContext:
        context = chromium.new_context(viewport=PHONE, has_touch=True)
        context.set_default_timeout(10_000)
        made.append(context)
        return context

    yield make
    for context in made:
        context.close()


@pytest.fixture(scope="session")
def demo_url(
    tmp_path_factory: pytest.TempPathFactory,
    empty_database: Path,
    demo: Record,
    compiled: FileSystemBytecodeCache,
) -> Iterator[str]:
    """The demo home with its pictures, served once for journeys of their own parts."""
    data = tmp_path_factory.mktemp("demo")
    shutil.copy(empty_database, data / DATABASE)
    config = Config(data=data, port=0, secret_key=b"of the tests" * 3)
    with writing(make_engine(config.database)) as connection:
        add_home(connection, with_pictures(demo, config.files))
    app = create_app(config)
    app.jinja_env.bytecode_cache = compiled
    with serving(app) as address:
        yield address


@pytest.fixture(scope="session")
def demo_desk(chromium: Browser, demo_url: str) -> Iterator[BrowserContext]:
    """One desk before the demo home, for all of them."""
    context = chromium.new_context(
        base_url=demo_url, viewport=DESK, reduced_motion="reduce"
    )
    context.set_default_timeout(10_000)
    yield context
    context.close()


@pytest.fixture
def keys(demo_desk: BrowserContext) -> Iterator[Keys]:
    """The keys of a page of the demo home; at the end nothing may have gone wrong."""
    watch = Watch(demo_desk)
    page = demo_desk.new_page()
    yield Keys(page)
    page.close()
    assert watch.found == []
