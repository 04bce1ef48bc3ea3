"""The eye is not blind: it sees what is planted."""

from __future__ import annotations

import pytest

from tests.browser.conftest import DESK, PHONE, Opens
from tests.browser.eye import faults_of

PLANTED = {
    "image-alt": "<img src='data:,'>",
    "label": "<input>",
    "color-contrast": "<p id='faint'>Hardly to be seen</p>",
    "lower than 48 px": "<button>Save</button>",
    "runs off the side": "<p id='long'>Too long for a narrow screen</p>",
    "little room is left": "<nav class='places'>Held to the edge</nav>",
}
STYLES = (
    "#faint { color: #ddd; } #long { width: 400px; }"
    ".places { position: fixed; bottom: 0; height: 12rem; }"
)


@pytest.mark.parametrize("fault", PLANTED)
def test_a_fault_is_seen(opens: Opens, fault: str) -> None:
    page = opens(viewport=PHONE)
    page.set_content(
        f"<!DOCTYPE html><html lang='en'><title>Planted</title>"
        f"<style>{STYLES}</style><main><h1>Planted</h1>{PLANTED[fault]}</main>"
    )
    assert any(fault in found for found in faults_of(page))


def test_what_is_faint_in_the_dark_is_seen_on_a_desk(opens: Opens) -> None:
    page = opens(viewport=DESK)
    style = "@media (prefers-color-scheme: dark) { #faint { color: #ddd; } }"
    page.set_content(
        f"<!DOCTYPE html><html lang='en'><title>Planted</title>"
        f"<style>{style}</style><main><h1>Planted</h1>{PLANTED['color-contrast']}</main>"
    )
    assert any("color-contrast" in found for found in faults_of(page))
