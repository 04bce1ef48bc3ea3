"""On the phone, without a script: take a photograph in the walk, mark what it shows."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import FilePayload, Page, expect

from app.config import Config
from app.domain.record import Record
from app.services.homes import open_home
from app.store.engine import make_engine, reading
from tests.photographs import picture


def test_a_photograph_is_taken_and_a_spot_marked(
    phone: Page, keep: Callable[[Record], int], demo: Record, config: Config
) -> None:
    keep(demo)
    room = demo.rooms[0]
    phone.goto(f"/homes/demo/walk/rooms/{room.ref}")
    taken = FilePayload(
        name="IMG_1.jpg", mimeType="image/jpeg", buffer=picture(1200, 900)
    )
    phone.get_by_label("Take it").set_input_files(taken)
    phone.get_by_role("button", name="Send the photograph").click()
    expect(phone.get_by_text("Added photograph IMG_1.jpg (F1)")).to_be_visible()
    phone.goto("/homes/demo/files/F1/")
    phone.get_by_role("link", name="Mark a spot").click()
    touched = phone.get_by_role("button", name="Touch the picture").locator(
        "visible=true"
    )
    box = touched.bounding_box()
    assert box is not None
    touched.click(position={"x": box["width"] / 4, "y": box["height"] / 2})
    expect(phone.get_by_text("Touch the picture elsewhere")).to_be_visible()
    phone.get_by_label("Words").fill("This way")
    phone.get_by_role("button", name="Save", exact=True).click()
    expect(phone.get_by_text("This way").first).to_be_visible()
    with reading(make_engine(config.database)) as connection:
        [spot] = open_home(connection, "demo").record.spots
    assert (spot.across, spot.down) == pytest.approx((250, 500), abs=5)
