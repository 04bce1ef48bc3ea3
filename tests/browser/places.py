"""Where to look: every page type of a home, and the pages beside the homes."""

from __future__ import annotations

from collections import Counter

from app.domain.record import Record

BESIDE = (
    "/homes/", "/homes/new", "/homes/due", "/import", "/like-another", "/help/",
    "/words/",
    "/copies/", "/phones/", "/help/tables/", "/help/tables/flat-twin-and-earth",
)  # fmt: skip
LISTS = (
    "", "intake/", "sources/", "boards/", "circuits/", "rooms/", "points/?filter=hall",
    "ask/", "open-questions/", "changes/", "past/", "past/compare", "document",
    "search/?q=light", "edit",
    "delete", "rooms/quick/table", "new/devices", "new/intake?kind=cutout",
    "new/points", "new/ties", "labels/", "labels/sheets", "walk/rooms", "rounds/",
    "rounds/new", "rounds/results", "isolate/", "isolate/whole-house",
    "remarks/", "remarks/sockets-without-30-ma/",
    "copy", "corrections/", "papers/", "results/", "new/papers", "house/", "one-line/",
    "spreadsheet?kind=points",
    "tripped/", "tripped/?to=moved&to=rcd", "trips/",
    "tripped/?to=moved&to=rcd&device=%3F",
    "tripped/?to=moved&to=rcd&to=rcd-on&to=ways-off&to=neutral&to=tell&device=%3F",
    "works/", "hand-over/", "reminders/", "reminders/inspection/done", "new/works",
    "new/reminders",
    "files/", "files/new", "files/compare",
    "load/", "load/?shower_kw=8.5&charger_kw=7.4",
    "may-i/", "may-i/?q=shed", "may-i/something-else/?nation=wales",
    "may-i/bath-fan/?nation=england&place=bath_zone&new_circuit=no",
    "may-i/bath-fan/nations", "may-i/rewire/", "call/",
)  # fmt: skip
PAGES = {
    "boards": ("", "ways", "list", "labels", "chart"),
    "rooms": ("", "points"),
    "devices": ("", "edit", "delete"),
    "circuits": ("", "figures/"),
    "points": ("", "edit"),
    "works": ("", "done"),
    "papers": ("",),
    "results": ("",),
    "rounds": ("ready", "prepare", "marks"),
    "files": ("", "edit", "delete"),
    "spots": ("edit", "delete"),
}
# What an address calls otherwise than the record does.
PLURALS = {"attachments": "files"}


def places_of(record: Record) -> list[str]:
    """Return an address of every page type of a home, as far as it has things."""
    home = f"/homes/{record.home.ref}/"
    things = [
        f"{sort}/{ref}/{page}"
        for sort, pages in PAGES.items()
        for ref in _fullest(record, sort)
        for page in pages
    ]
    walked = [f"walk/rooms/{ref}" for ref in _fullest(record, "rooms")]
    forward = [f"house/?lit={ref}" for ref in _fullest(record, "circuits")]
    plans = [
        f"isolate/plan{page}ref={ref}"
        for page in ("?", "/step?at=sources&", "/sheet?", "/notice?")
        for ref in _fullest(record, "rooms")
    ]
    sheets = [f"results/board/{ref}/copy" for ref in _fullest(record, "boards")]
    told = [f"changes/of/{ref}" for ref in _fullest(record, "points")]
    own = f"remarks/earthing-unknown/{record.home.ref}/aside"
    marks = [f"spots/on/{ref}" for ref in _fullest(record, "files")]
    beside = (*walked, *things, *forward, *plans, *sheets, *told, *marks)
    return [home + place for place in (*LISTS, own, *beside)]


def _fullest(record: Record, sort: str) -> list[str]:
    """Return the one thing of a sort with most hanging on it, if there is any.

    A round is one that is still to come.
    """
    refs = [
        item.ref
        for item in record.items()
        if PLURALS.get(item.plural, item.plural) == sort
        and getattr(item, "stage", "planned") == "planned"
    ]
    hanging = Counter(
        getattr(item, name, None)
        for item in record.items()
        for name in ("board", "room", "point", "fed_from", "attachment")
    )
    return sorted(refs, key=lambda ref: -hanging[ref])[:1]
