"""A careful eye on a page: what axe finds, what is too small, what runs off it."""

from __future__ import annotations

from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import Page, ViewportSize

TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
# WCAG 2.2, 1.4.10: 320 px, as 1280 px at 400 %, where little height is left too.
NARROW = (
    ViewportSize(width=320, height=640),
    ViewportSize(width=320, height=256),
)
TARGET_PX = 48
# At its end nothing of a page lies under a bar that is held to the edge.
RUN = """async (options) => {
  scrollTo(0, document.documentElement.scrollHeight);
  const { violations } = await axe.run({ resultTypes: ["violations"], ...options });
  return violations.flatMap(({ id, nodes }) => nodes.map(
    (node) => `${id}: ${node.html.slice(0, 100)} ${node.failureSummary}`));
}"""
WIDE_PX = 800

SMALL = """(least) => [...document.querySelectorAll("button, select, input, .button")]
  .filter((e) => e.checkVisibility() && !e.matches("[type=hidden]"))
  .map((e) => e.matches("[type=checkbox], [type=radio]") ? e.closest("li, div") : e)
  .filter((e) => e.getBoundingClientRect().height < least - 0.01)
  .map((e) => "lower than 48 px: " + e.outerHTML.slice(0, 100))"""
SIDEWAYS = """() => {
  const root = document.documentElement;
  if (root.scrollWidth <= root.clientWidth) return [];
  const far = [...document.body.querySelectorAll("*")].filter(
    (e) => e.getBoundingClientRect().right > root.clientWidth + 0.5);
  return ["runs off the side: " + (far[0] || root).outerHTML.slice(0, 100)];
}"""
# Forced colours lay the canvas behind every word: one of its colour cannot be read.
UNSEEN = """() => {
  const canvas = getComputedStyle(document.documentElement).backgroundColor;
  const paper = canvas === "rgba(0, 0, 0, 0)" ? "rgb(0, 0, 0)" : canvas;
  const said = (e) => [...e.childNodes].some(
    (n) => n.nodeType === 3 && n.textContent.trim());
  return [...document.body.querySelectorAll("*")]
    .filter((e) => said(e) && e.checkVisibility())
    .filter((e) => getComputedStyle(e).forcedColorAdjust === "auto")
    .filter((e) => getComputedStyle(e).color === paper)
    .map((e) => "not seen in forced colours: " + e.outerHTML.slice(0, 100));
}"""
# A thing held to the bottom edge may not take the room in which one reads.
ROOM = """() => {
  const held = [...document.querySelectorAll(".places, .thumb")].filter(
    (e) => ["fixed", "sticky"].includes(getComputedStyle(e).position));
  const taken = held.reduce((sum, e) => sum + e.offsetHeight, 0);
  return taken > innerHeight / 4 ? ["little room is left to read in"] : [];
}"""


def faults_of(page: Page) -> list[str]:
    """Return what is wrong: in the light on a phone, narrow too, else dark, and forced.

    What axe finds at either size is the same in the dark but for contrast, and contrast
    is the same at either size: so each size is looked at in one of the two.
    """
    size = page.viewport_size
    assert size is not None
    small = size["width"] < WIDE_PX
    page.emulate_media(color_scheme="light" if small else "dark")
    found = _axe(page, {"runOnly": {"type": "tag", "values": TAGS}})
    found += page.evaluate(SMALL, TARGET_PX)
    if small:
        found += _when_narrow(page)
        page.set_viewport_size(size)
    else:
        page.emulate_media(forced_colors="active")
        found += page.evaluate(UNSEEN)
        page.emulate_media(forced_colors="none")
    return [f"{page.url}: {fault}" for fault in found]


def _when_narrow(page: Page) -> list[str]:
    found: list[str] = []
    for narrow in NARROW:
        page.set_viewport_size(narrow)
        found += [*page.evaluate(SIDEWAYS), *page.evaluate(ROOM)]
    return found


def _axe(page: Page, options: dict[str, object]) -> list[str]:
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate(AXE_SCRIPT)
    found: list[str] = page.evaluate(RUN, options)
    return found
