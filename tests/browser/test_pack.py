"""The page of a pack, opened from the disk with no network."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import pytest
from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import Browser, expect

from app.domain.pack import PARTS
from app.domain.record import Record
from app.services.pack import Wanted, pack_files
from tests.browser.conftest import DESK, PHONE
from tests.browser.eye import RUN, SIDEWAYS, TAGS


@pytest.fixture(scope="module")
def page_file(tmp_path_factory: pytest.TempPathFactory, demo: Record) -> Path:
    wanted = Wanted(record=demo, day=date(2026, 11, 25), without=tuple(PARTS))
    path = tmp_path_factory.mktemp("pack") / "pack.html"
    path.write_bytes(pack_files(wanted)["pack.html"])
    return path


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_it_is_read_and_searched_from_the_disk(
    chromium: Browser, page_file: Path, size: dict[str, int], tmp_path: Path
) -> None:
    context = chromium.new_context(viewport=size, offline=True)  # type: ignore[arg-type]
    page = context.new_page()
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.goto(page_file.as_uri())
    assert page.evaluate(SIDEWAYS) == []
    page.get_by_label("Find in this record").fill("chest freezer")
    expect(page.get_by_role("status")).to_contain_text("of")
    expect(page.get_by_text("Chest freezer socket (P67)").first).to_be_visible()
    expect(page.get_by_text("Porch light and doorbell (C4)").first).to_be_hidden()
    page.get_by_label("Find in this record").fill("")
    page.get_by_label("Way 5, “COOKER” (B1.F5) feeds").fill("the shed")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save the reply as a file").click()
    download.value.save_as(tmp_path / "reply.json")
    reply = json.loads((tmp_path / "reply.json").read_text("utf-8"))
    assert reply["ways"] == [{"ref": "B1.F5", "feeds": "the shed"}]
    assert said == []
    context.close()


def test_axe_finds_nothing_and_it_is_whole_without_a_script(
    chromium: Browser, page_file: Path
) -> None:
    context = chromium.new_context(viewport=DESK, bypass_csp=True, offline=True)
    page = context.new_page()
    page.goto(page_file.as_uri())
    page.evaluate(AXE_SCRIPT)
    assert page.evaluate(RUN, {"runOnly": {"type": "tag", "values": TAGS}}) == []
    context.close()
    plain = chromium.new_context(java_script_enabled=False, offline=True)
    page = plain.new_page()
    page.goto(page_file.as_uri())
    expect(page.get_by_text("Before you touch anything").first).to_be_visible()
    expect(page.get_by_label("Find in this record")).to_be_hidden()
    plain.close()
