"""Addresses of the things in a record."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from flask import url_for

from app.domain.record import Item, Record, Spot

# Words, and the address that they lead to.
Link = tuple[str, str]
PAGES = {
    "room", "board", "device", "circuit", "point", "work", "paper", "attachment",
    "result",
}  # fmt: skip
# The field that says on whose page an item is listed.
PLACE = {
    "device": "board",
    "point": "room",
    "tie": "point",
    "control": "controlled",
    "spot": "attachment",
}
# Sorts whose forms are pages of their own.
OWN_FORMS = {"attachment", "spot"}
ANCHORS = {"intake": "intake.index", "source": "sources.index", "trip": "trips.index"}
# What no page of its own shows: the list that it counts in.
LISTS = {
    "round": "findings.index",
    "reading": "findings.index",
    "aside": "remarks.index",
    "occasion": "reminders.index",
    "reminder": "reminders.index",
}


def item_url(home: str, item: Item) -> str:
    """Return the address where a thing is shown."""
    if item.sort in PAGES:
        return url_for(f"{item.plural}.show", home=home, ref=item.ref)
    if isinstance(item, Spot):
        anchor, picture = f"spot-{item.ref}", item.attachment
        return url_for("attachments.show", home=home, ref=picture, _anchor=anchor)
    if item.sort in ANCHORS:
        return url_for(ANCHORS[item.sort], home=home, _anchor=f"item-{item.ref}")
    if item.sort in LISTS:
        return url_for(LISTS[item.sort], home=home)
    return edit_url(home, item)


def links_to(record: Record, refs: Iterable[str | None]) -> tuple[Link, ...]:
    """Return what things are called, and where they are shown; what is gone is not."""
    items = (record.by_ref.get(ref or "") for ref in refs)
    return tuple((i.title, item_url(record.home.ref, i)) for i in items if i)


def meaning_url(slug: str) -> str:
    """Return the address where a word of the trade is explained."""
    return url_for("glossary.index", _anchor=slug)


def edit_url(home: str, item: Item) -> str:
    """Return the address of the form of a thing."""
    if item.sort in OWN_FORMS:
        return url_for(f"{item.plural}.edit", home=home, ref=item.ref)
    return url_for("items.edit", home=home, plural=item.plural, ref=item.ref)


def delete_url(home: str, item: Item) -> str:
    """Return the address where deleting a thing is asked about."""
    if item.sort in OWN_FORMS:
        return url_for(f"{item.plural}.delete", home=home, ref=item.ref)
    return url_for("items.delete", home=home, plural=item.plural, ref=item.ref)


def links(record: Record) -> Callable[[str], str | None]:
    """Return the function that drawings use to find a thing's address."""

    def link(ref: str) -> str | None:
        item = record.by_ref.get(ref)
        return item_url(record.home.ref, item) if item else None

    return link


def list_url(record: Record, item: Item, done: int | None) -> str:
    """Return where a thing is listed: its board, its room, its point, its list."""
    place = record.by_ref.get(getattr(item, PLACE.get(item.sort, ""), None) or "")
    if place is not None:
        return with_done(item_url(record.home.ref, place), done)
    plural = item.plural if f"{item.plural}" not in ("ties", "controls") else "points"
    plural = "boards" if plural == "devices" else plural
    return url_for(f"{plural}.index", home=record.home.ref, done=done)


def with_done(url: str, done: int | None) -> str:
    """Name the change in an address, before its anchor."""
    if done is None:
        return url
    path, sharp, anchor = url.partition("#")
    return f"{path}?done={done}{sharp}{anchor}"
