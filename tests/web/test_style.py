"""The layout, the style sheets, and the rules that hold for every template."""

from __future__ import annotations

import re
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import html5lib
import pytest

from app.web.errors import ErrorPage
from tests.web.test_components import NASTY, NS, environment, text_of

ROOT = Path(__file__).resolve().parents[2]
# What is carried away as one file holds its style and script itself, under a hash.
CARRIED = "pack.css"
EVERY = sorted((ROOT / "templates").rglob("*.html"))
TEMPLATES = [
    path for path in EVERY if path.parent.name != "pack" or "pages" in path.parts
]
SHEETS = sorted((ROOT / "static" / "css").rglob("*.css"))


def site(**changes: Any) -> SimpleNamespace:
    links = (("Boards", "/boards", True), ("Rooms", "/rooms", False))
    place = SimpleNamespace(label="Record", url="/r", current=True, links=links)
    known: dict[str, Any] = {
        "home": SimpleNamespace(ref="H1", name="Home", url="/home"),
        "places": [place],
        "search_url": "/search",
        "query": NASTY,
        "undo": SimpleNamespace(sentence=NASTY, url="/undo", token=9),
        "demo": True,
        "csrf": "token",
        "asked_here": True,
        "static": lambda name: f"/static/{name}",
        "help_url": "/help",
        "glossary_url": "/words",
        "homes_url": "/homes",
        "copies_url": "/copies",
        "phones_url": "/phones",
        "version": "1",
    }
    return SimpleNamespace(**known | changes)


def error_page(**changes: Any) -> str:
    page = ErrorPage(title="Not here", sentence=NASTY, remedy="Go back.")
    template = environment().get_template("errors/error.html")
    return template.render(page=page, site=site(**changes))


def document(markup: str) -> Any:
    return html5lib.HTMLParser(strict=True).parse(markup)


def test_the_layout_is_valid_and_names_the_page_and_the_places() -> None:
    root = document(error_page())
    [title] = root.iter(f"{NS}title")
    assert title.text == "Not here · Ways and Points"
    assert root.get("lang") == "en-GB"
    ids = [e.get("id") for e in root.iter() if e.get("id")]
    assert len(ids) == len(set(ids))
    [skip] = [a for a in root.iter(f"{NS}a") if a.get("class") == "skip"]
    assert skip.get("href").removeprefix("#") in ids
    current = [text_of(a) for a in root.iter(f"{NS}a") if a.get("aria-current")]
    assert current == ["Record", "Boards"]


def test_the_layout_offers_to_undo_and_escapes_what_was_done() -> None:
    markup = error_page()
    root = document(markup)
    [form] = [f for f in root.iter(f"{NS}form") if f.get("action") == "/undo"]
    hidden = {e.get("name"): e.get("value") for e in form.iter(f"{NS}input")}
    assert hidden == {"csrf_token": "token", "token": "9"}
    assert NASTY not in markup


def test_the_layout_stands_without_a_home() -> None:
    bare = error_page(home=None, places=[], search_url=None, undo=None, demo=False)
    root = document(bare)
    assert not list(root.iter(f"{NS}nav"))
    assert not list(root.iter(f"{NS}form"))


def test_the_layout_links_every_style_sheet_and_two_scripts() -> None:
    root = document(error_page())
    links = [e.get("href") for e in root.iter(f"{NS}link") if e.get("href")]
    linked = [href for href in links if href.endswith(".css")]
    folder = ROOT / "static"
    pages = (path for path in SHEETS if path.name != CARRIED)
    there = [f"/static/{path.relative_to(folder).as_posix()}" for path in pages]
    assert sorted(linked) == sorted(there)
    assert linked[0] == "/static/css/tokens.css"
    scripts = [e.get("src") for e in root.iter(f"{NS}script")]
    assert scripts == ["/static/js/main.js", "/static/js/outbox.js"]


def without_comments(path: Path) -> str:
    return re.sub(r"/\*.*?\*/", "", path.read_text(encoding="utf-8"), flags=re.DOTALL)


NAMED = "black|white|red|green|blue|yellow|orange|gr[ae]y|brown|purple|pink|navy"
COLOUR = re.compile(
    rf"#[\da-f]{{3,8}}\b|\b(?:rgb|hsl|hwb|lab|lch|oklab|oklch|color|color-mix)a?\("
    rf"|:[^;]*(?<![\w-])(?:{NAMED})(?![\w-])",
    re.IGNORECASE,
)


def test_the_search_for_colours_finds_them() -> None:
    for line in ("color: #fff;", "border: 1px solid red;", "fill: rgb(0 0 0);"):
        assert COLOUR.search(line), line
    for line in ("color: var(--red-pen);", "fill: currentColor;", "white-space: x;"):
        assert not COLOUR.search(line), line


@pytest.mark.parametrize("path", SHEETS, ids=lambda path: path.name)
def test_a_style_sheet_keeps_to_the_rules(path: Path) -> None:
    css = without_comments(path)
    if path.name != "tokens.css":
        assert not COLOUR.findall(css)
        assert "#" not in css
    assert "!important" not in css
    assert css.count("{") == css.count("}")
    outside = re.sub(r"@layer [\w, ]+;", "", css).strip()
    assert re.match(r"@layer (tokens|base|layout|components|print) \{", outside)


def test_every_token_used_is_declared() -> None:
    css = "".join(without_comments(path) for path in SHEETS)
    used = set(re.findall(r"var\((--[\w-]+)", css))
    declared = set(re.findall(r"(?m)^\s+(--[\w-]+):", css))
    assert used == declared


@pytest.mark.parametrize(
    "path", TEMPLATES, ids=lambda path: path.relative_to(ROOT).as_posix()
)
def test_a_template_holds_no_inline_style_or_script(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert not re.search(r"<style\b", text)
    assert not re.search(r"<script(?![^>]*\bsrc=)", text)
    assert not re.search(r"\sstyle\s*=", text)
    assert not re.search(r"\son[a-z]+\s*=\s*[\"'{]", text)
    assert not re.search(r"javascript:|with context", text)


def luminance(colour: str) -> float:
    """Return the relative luminance, as WCAG 2.2 defines it."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (
        p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def schemes() -> dict[str, dict[str, str]]:
    parts = (ROOT / "static/css/tokens.css").read_text(encoding="utf-8").split("@media")
    light, dark = (dict(re.findall(r"--([\w-]+): (#\w{6});", p)) for p in parts[:2])
    return {"light": light, "dark": light | dark}


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_ink_stands_out_from_paper(scheme: str) -> None:
    """WCAG 2.2, 1.4.3: 4.5 for text; 1.4.11: 3 for the edge of a control."""
    colours = schemes()[scheme]
    for ground in ("paper", "paper-sunk"):
        for ink in ("ink", "ink-soft", "pen", "accent", "red-pen"):
            assert contrast(colours[ink], colours[ground]) >= 4.5, (ink, ground)
        assert contrast(colours["rule-strong"], colours[ground]) >= 3, ground
    for ground in ("accent", "accent-deep"):
        assert contrast(colours["on-accent"], colours[ground]) >= 4.5, ground
