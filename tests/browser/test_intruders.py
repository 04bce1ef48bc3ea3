"""The worst pages in a real browser: nothing runs, nothing is asked for, all rests."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Dialog, Page, Request

from app.config import Config
from app.domain.record import Record
from app.services.demo_pictures import with_pictures
from tests.attacks.hostile import hostile

WORST = (
    "/homes/", "/homes/demo/", "/homes/demo/boards/B1/", "/homes/demo/house/",
    "/homes/demo/circuits/C1", "/homes/demo/points/P1/edit", "/homes/demo/one-line/",
    "/homes/demo/isolate/plan?ref=B1", "/homes/demo/files/F1",
    "/homes/demo/search/?q=%3Cscript%3Edocument.title%3D%27zq%27%3C/script%3E",
)  # fmt: skip
REST_MS = 5000


def test_no_text_runs_and_an_open_page_asks_for_nothing_more(
    desk: Page, keep: Callable[[Record], int], demo: Record, config: Config
) -> None:
    keep(hostile(with_pictures(demo, config.files)))
    dialogs: list[str] = []
    broken: list[str] = []
    sent: list[str] = []

    def dismissed(dialog: Dialog) -> None:
        dialogs.append(dialog.message)
        dialog.dismiss()

    def noted(request: Request) -> None:
        sent.append(request.url)

    desk.on("dialog", dismissed)

    def said(what: str) -> None:
        broken.append(what)

    desk.expose_function("zqBroken", said)
    desk.add_init_script(
        "addEventListener('securitypolicyviolation',"
        " e => zqBroken(`${e.violatedDirective} ${e.blockedURI}`))"
    )
    for place in WORST:
        desk.goto(place)
        assert desk.title() != "zq", place
        assert desk.locator("[onerror], [onload], img[src^='zq']").count() == 0, place
    assert dialogs == []
    assert broken == []
    desk.wait_for_load_state("networkidle")
    desk.on("request", noted)
    desk.wait_for_timeout(REST_MS)
    assert sent == []
