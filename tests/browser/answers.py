"""What a page answers, read as a person reads it."""

from __future__ import annotations

from urllib.parse import urlsplit

from playwright.sync_api import Page


def chain_of(page: Page, number: int = 1) -> list[str]:
    """Return the references along a chain that is drawn, from the source down."""
    drawing = page.get_by_role("region", name=f"({number})")
    links = drawing.get_by_role("link").all()
    return [_reference(link.get_attribute("href") or "") for link in links]


def fact(page: Page, label: str) -> str:
    """Return the words beside a label."""
    row = page.locator("dl > div", has=page.get_by_role("term").get_by_text(label))
    return row.get_by_role("definition").inner_text()


def _reference(href: str) -> str:
    url = urlsplit(href)
    return url.fragment or url.path.rstrip("/").rpartition("/")[2]
