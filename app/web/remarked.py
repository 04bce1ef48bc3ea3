"""Remarks as pages show them: worked out once a request, each with where it leads."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from flask import g, request, url_for

from app.domain.record import Item, Record
from app.domain.remarks import RANKS, Figure, Remark
from app.web.addresses import Link, edit_url, item_url
from app.web.papers import today
from app.web.session import opened

# Pages of one item, which show the remarks on it.
ITEM_PAGES = frozenset(
    {"points.show", "circuits.show", "boards.show", "devices.show", "rooms.show"}
)
MOST_ON_ITEM = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class RowView:
    """A remark in one line of a list.

    Attributes:
        rank: Code of its rank.
        word: The rank in words.
        title: Its title.
        url: Address of its page.
        sentence: What was found first.
        more: How many more were found.
        to_do: What to do, where that cannot wait; else empty.
    """

    rank: str
    word: str
    title: str
    url: str
    sentence: str
    more: int
    to_do: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OutcomeView:
    """One thing that a remark found, or cannot tell.

    Attributes:
        sentence: What was found, or what is missing.
        figures: The figures it rests on, label and words.
        links: What it looked at: label and address.
        aside: Address where it is set aside.
        state: Whether it is set aside: no, set, or back since its facts changed.
        ref: Reference of what sets it aside; may be empty.
        reason: Why it was set aside; may be empty.
    """

    sentence: str
    figures: tuple[tuple[str, str], ...]
    links: tuple[Link, ...]
    aside: str
    state: str
    ref: str
    reason: str


def remarked(home: str) -> tuple[Remark, ...]:
    """Return the remarks of a home, worked out once a request."""
    if "remarks" not in g:
        g.remarks = opened(home).worked.remarks(today())
    found: tuple[Remark, ...] = g.remarks
    return found


def standing(found: Iterable[Remark]) -> tuple[Remark, ...]:
    """Return the remarks that are neither set aside nor open."""
    return tuple(r for r in found if r.outcome == "remark" and r.aside != "set")


def counts(found: Iterable[Remark]) -> str:
    """Return how many kinds of remark there are of each rank, in words."""
    ranks = {remark.code: remark.rank for remark in standing(found)}
    words = {
        "call": "to leave alone and call about",
        "electrician": "to ask an electrician about",
        "knowing": "worth knowing",
        "record": "about gaps in the record",
    }
    parts = [
        f"{number} {words[rank]}"
        for rank in RANKS
        if (number := list(ranks.values()).count(rank))
    ]
    return ", ".join(parts)


def rows_of(home: str, found: Iterable[Remark]) -> tuple[RowView, ...]:
    """Return one row for each kind of remark, in the order of the remarks."""
    kinds: dict[str, list[Remark]] = {}
    for remark in found:
        kinds.setdefault(remark.code, []).append(remark)
    return tuple(_row(home, remarks) for remarks in kinds.values())


def on_item() -> tuple[RowView, ...]:
    """Return the remarks on the item that the page is about."""
    ref, home = (request.view_args or {}).get("ref"), g.home.record.home.ref
    if request.endpoint not in ITEM_PAGES or ref is None:
        return ()
    about = (r for r in standing(remarked(home)) if ref in r.about)
    return rows_of(home, about)[:MOST_ON_ITEM]


def outcome_view(record: Record, remark: Remark) -> OutcomeView:
    """Return one outcome with its figures and links."""
    home, subject = record.home.ref, remark.about[0]
    items = [record.by_ref[ref] for ref in remark.about if ref in record.by_ref]
    aside = record.by_ref.get(remark.aside_ref or "")
    return OutcomeView(
        sentence=remark.sentence,
        figures=tuple(_figure(figure) for figure in remark.figures),
        links=tuple(_link(home, item) for item in items),
        aside=url_for(".aside", home=home, code=remark.code, subject=subject),
        state=remark.aside,
        ref=remark.aside_ref or "",
        reason=getattr(aside, "reason", ""),
    )


def needed(
    record: Record, found: Iterable[Remark]
) -> tuple[tuple[str, tuple[Link, ...]], ...]:
    """Return what is missing before remarks can be told, with where it is entered."""
    needs: dict[str, dict[str, Link]] = {}
    for remark in found:
        if remark.outcome == "cannot_tell" and remark.aside != "set":
            for need in remark.needs:
                needs.setdefault(need.what, {})[need.ref] = _edit(record, need.ref)
    most_first = sorted(needs.items(), key=lambda pair: -len(pair[1]))
    return tuple(
        (what[0].upper() + what[1:], tuple(links.values()))
        for what, links in most_first
    )


def _row(home: str, remarks: list[Remark]) -> RowView:
    first = remarks[0]
    return RowView(
        rank=first.rank,
        word=RANKS[first.rank],  # type: ignore[index]
        title=first.title,
        url=url_for("remarks.show", home=home, code=first.code),
        sentence=first.sentence,
        more=len(remarks) - 1,
        to_do=first.to_do if first.rank == "call" else "",
    )


def _figure(figure: Figure) -> tuple[str, str]:
    how = ", calculated from your record" if figure.calculated else ""
    return figure.label, f"{figure.value} {figure.unit}".strip() + how


def _link(home: str, item: Item) -> Link:
    return f"{item.title} ({item.ref})", item_url(home, item)


def _edit(record: Record, ref: str) -> Link:
    item = record.by_ref.get(ref)
    if item is None:
        return record.home.name, url_for("homes.edit", home=record.home.ref)
    return f"{item.title} ({ref})", edit_url(record.home.ref, item)
