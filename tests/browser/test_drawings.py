"""The drawings on a phone: a circuit brought forward, a file kept; no script."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import BrowserContext, Page, expect

from app.domain.record import Record
from tests.big_home import big_home

Keep = Callable[[Record], int]
LIT = "a.drawing__thing--lit"
SIDEWAYS = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


def test_a_circuit_is_brought_forward_without_a_script(phone: Page, keep: Keep) -> None:
    keep(big_home())
    phone.goto("/homes/H1/house/")
    expect(phone.locator(LIT)).to_have_count(0)
    phone.get_by_label("Bring forward").select_option("C5")
    phone.get_by_role("button", name="Show").click()
    expect(phone.get_by_role("status").last).to_contain_text("Brought forward")
    phone.get_by_role("link", name="Down to").first.click()
    expect(phone.locator(LIT).first).to_be_in_viewport()
    assert phone.evaluate(SIDEWAYS) == 0


def test_its_file_opens_from_the_disk(
    phone: Page,
    keep: Keep,
    tmp_path: Path,
    contexts: Callable[[], BrowserContext],
) -> None:
    keep(big_home(points=9))
    phone.goto("/homes/H1/house/?lit=C5")
    with phone.expect_download() as download:
        phone.get_by_role("link", name="Keep it as a drawing").click()
    kept = tmp_path / download.value.suggested_filename
    download.value.save_as(kept)
    page = contexts().new_page()
    page.goto(kept.as_uri())
    expect(page.get_by_text("House by circuit: A home").last).to_be_attached()
    ink = "getComputedStyle(document.querySelector('text')).fill"
    assert page.evaluate(ink) == "rgb(0, 0, 0)"
