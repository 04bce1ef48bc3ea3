"""What a page answers, read as a person reads it."""

from __future__ import annotations

from playwright.sync_api import Page


def chain_of(page: Page, number: int = 1) -> list[str]:
    """Return the references along a chain that is drawn, from the source down."""
    drawing = page.get_by_role("region", name=f"({number})")
    links = drawing.get_by_role("link").all()
    return [link.get_attribute("data-ref") or "" for link in links]


def boundaries_of(page: Page, number: int = 1) -> list[tuple[str, str]]:
    """Return between which two references of a chain the drawing changes hands."""
    drawing = page.get_by_role("region", name=f"({number})")
    marks: list[str] = drawing.locator("a, text").evaluate_all(
        "all => all.map(e => e.dataset.ref || (e.closest('a') ? '' : e.textContent))"
    )
    kept = [mark for mark in marks if mark and not mark.startswith("above: ")]
    places = [at for at, mark in enumerate(kept) if mark == "Changes hands here"]
    return [(kept[at - 1], kept[at + 1]) for at in places]


def fact(page: Page, label: str) -> str:
    """Return the words beside a label."""
    row = page.locator("dl > div", has=page.get_by_role("term").get_by_text(label))
    return row.get_by_role("definition").inner_text()
