"""What the screens of “It has tripped” show: the question, and what the record adds."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from flask import url_for

from app.domain.days import in_words
from app.domain.isolation.help import whom_to_call
from app.domain.network import Network
from app.domain.record import Board, Room, Trip
from app.domain.record.choices import CARE
from app.domain.tripped import (
    GROUNDS,
    TO_ADD,
    Hanging,
    Moves,
    Screen,
    Suspect,
    WayBelow,
    candidates,
    choices_of,
    earlier,
    hanging,
    how_often,
    missed,
    moved,
    named,
    neutral_lines,
    story,
    suspects,
    where,
    wrong_lines,
    wrong_on,
)
from app.web.tripped_address import NOBODY_KNOWS, Walk

Lines = tuple[str, tuple[str, ...]]
Group = tuple[str, tuple[tuple[str, str], ...]]
PICK = {
    "device": ("Which one has moved?", "I cannot tell which"),
    "way": ("Which way trips it?", "It is not in this list"),
    "point": ("What trips it?", "It is not in this list"),
}
FUSES_STAY = (
    "A fuse stays where it is, so what hangs on it cannot be parted here: if it still "
    "trips, leave it off and call."
)
START = Walk(codes=(), named=())
# Where a thing that has moved is about to be switched on again.
BEFORE_RESETTING = frozenset({"rcd", "breaker"})


@dataclass(frozen=True, slots=True, kw_only=True)
class ScreenPage:
    """One screen.

    Attributes:
        title: The question, in big type.
        says: Sentences below it.
        about: What moved, and how often it has before.
        reminder: What is missed while it is off, in one line.
        missed: The same with where each is, what matters most first.
        groups: What hangs on it: why it is suspected, then each with what to do.
        lines: Other lists: heading, sentences.
        why: Why this is asked.
        choices: The answers: words, address.
        stop: Whether it is an end at which nothing more is switched.
        kept: Names and values of the walk, where it can be kept as an entry.
        back: Address of the step before; empty on the first screen.
        start: Address of the first screen.
        sheet: Address of the sheet for the board.
        log: Address of what tripped before.
    """

    title: str
    says: tuple[str, ...]
    about: str
    reminder: str
    missed: tuple[str, ...]
    groups: tuple[Group, ...]
    lines: tuple[Lines, ...]
    why: str
    choices: tuple[tuple[str, str], ...]
    stop: bool
    kept: tuple[tuple[str, str], ...]
    back: str
    start: str
    sheet: str
    log: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PickPage:
    """A screen on which a thing of the record is named.

    Attributes:
        title: The question.
        groups: What may be chosen: heading, then words and address of each.
        unknown: What to choose when nobody knows: words, address.
        back: Address of the step before.
        start: Address of the first screen.
    """

    title: str
    groups: tuple[Group, ...]
    unknown: tuple[str, str]
    back: str
    start: str


def options(net: Network, walk: Walk) -> tuple[Group, ...]:
    """Return what may be named next, by heading: words and reference of each."""
    if walk.open == "device":
        found = candidates(net.record, walk.codes[-1])
        return _by((_where(net, item), item.title, item.ref) for item in found)
    hangs = hanging_on(net, walk)
    if walk.open == "way":
        return _by((way.board, named(way), way.ref) for way in _ways(hangs))
    if walk.open == "point":
        found_here = _suspects(hangs)
        return _by((GROUNDS[s.ground], where(s), s.ref) for s in found_here)
    return ()


def pick_page(walk: Walk, groups: tuple[Group, ...], home: str) -> PickPage:
    """Return the screen on which one of these is named."""
    name = walk.open
    title, unknown = PICK[name]
    return PickPage(
        title=title,
        groups=tuple(
            (head, tuple((w, walk.naming(name, ref).url(home)) for w, ref in items))
            for head, items in groups
        ),
        unknown=(unknown, walk.naming(name, NOBODY_KNOWS).url(home)),
        back=walk.back().url(home),
        start=START.url(home),
    )


def screen_page(net: Network, walk: Walk) -> ScreenPage:
    """Return the screen that a walk has come to, with what the record adds."""
    screen, home = walk.screens[-1], net.record.home.ref
    hangs = hanging_on(net, walk)
    found = _suspects(hangs)
    shown = screen.shows == "suspects"
    choices = choices_of(screen, ways_below=_has_ways(hangs)).items()
    return ScreenPage(
        title=screen.title,
        says=screen.says,
        about=_about(net, walk, hangs),
        reminder=_reminder(found) if shown and not screen.resets else "",
        missed=missed(_left_off(net, walk, screen, found)),
        groups=_groups(found) if shown else (),
        lines=tuple(
            line
            for line in (
                *_wrong(net, walk, screen),
                *_lines(net, walk, screen, hangs),
            )
            if line[1]
        ),
        why=screen.why,
        choices=tuple((words, walk.going(code).url(home)) for code, words in choices),
        stop=screen.stop,
        kept=() if screen.choices else walk.pairs,
        back=walk.back().url(home) if walk.codes else "",
        start=START.url(home),
        sheet=url_for("tripped.sheet", home=home),
        log=url_for("trips.index", home=home),
    )


def leaving(net: Network, walk: Walk) -> Walk | None:
    """Return the walk to leaving it off, if by the record nothing may be switched on.

    That holds by address too: no screen that switches on is shown.
    """
    screen = walk.screens[-1]
    near = screen.resets or screen.code in BEFORE_RESETTING
    if not near or not wrong_on(net, walk.chosen.device):
        return None
    return Walk(codes=("leave",), named=walk.named)


def hanging_on(net: Network, walk: Walk) -> tuple[Hanging, ...]:
    """Return what moved with what hangs on it; all it may be, if nobody knows."""
    item = moved(net, walk.chosen.device)
    if item is not None:
        return (hanging(net, item),)
    naming = [screen.code for screen in walk.screens if screen.names == "device"]
    return tuple(hanging(net, d) for c in naming[:1] for d in candidates(net.record, c))


def since(trips: Iterable[Trip]) -> str:
    """Say how often these were, and since when, by this machine's clock."""
    found = tuple(trips)
    days = [local(trip.happened_at).date() for trip in found if trip.happened_at]
    return how_often(found, in_words(min(days)) if days else "")


def local(moment: str) -> datetime:
    """Return a moment of the record by this machine's clock."""
    return datetime.fromisoformat(moment).astimezone()


def _about(net: Network, walk: Walk, hangs: tuple[Hanging, ...]) -> str:
    """Say what moved; nothing before it was named, or where nobody knows."""
    if not walk.chosen.device or not hangs:
        return ""
    one = hangs[0]
    on = f", {one.board}" if one.board else ""
    before = earlier(net.record, one.ref)
    often = f" It has tripped before: {since(before)}." if before else ""
    return f"{one.title}{on}.{often}"


def _wrong(net: Network, walk: Walk, screen: Screen) -> tuple[Lines, ...]:
    """Return what is recorded as hot, broken or wet, where that is asked about."""
    if screen.code not in ("stop", "leave"):
        return ()
    bad = wrong_lines(wrong_on(net, walk.chosen.device))
    return (("By the record something is wrong: leave it off", bad),)


def _lines(
    net: Network, walk: Walk, screen: Screen, hangs: tuple[Hanging, ...]
) -> tuple[Lines, ...]:
    call = ("Whom to call", whom_to_call(net.record.home))
    if screen.shows == "boards":
        return (("Where they are", tuple(_place(net, b) for b in net.record.boards)),)
    if screen.shows == "ways":
        return _way_lines(hangs)
    if screen.shows == "neutral":
        return (("By the record", _neutral(hangs)), call)
    if screen.shows == "suspects":
        unrecorded = () if _suspects(hangs) else tuple(GROUNDS.values())
        return (
            ("Likely first", unrecorded),
            ("Its neutral goes another way than its line", _borrowed(hangs)),
        )
    if screen.shows == "tell":
        said = story(net, walk.screens, walk.chosen)
        return (("From this page", said), ("Add yourself", TO_ADD), call)
    return (call,) if screen.shows == "call" else ()


def _left_off(
    net: Network, walk: Walk, screen: Screen, found: tuple[Suspect, ...]
) -> tuple[Suspect, ...]:
    """Return what stays off at an end: one thing, one way, or all that hangs on it."""
    if not screen.stop or screen.code in ("tell", "holds"):
        return ()
    if walk.chosen.point:
        return tuple(s for s in found if s.ref == walk.chosen.point)
    return suspects(net, walk.chosen.way) if walk.chosen.way else found


def _reminder(found: tuple[Suspect, ...]) -> str:
    """Name what is missed, what matters most first."""
    cares = {care for suspect in found for care in suspect.care}
    return "; ".join(words.lower() for care, words in CARE.items() if care in cares)


def _way_lines(hangs: tuple[Hanging, ...]) -> tuple[Lines, ...]:
    ways = _ways(hangs)
    fuses = tuple(f"{named(way)}." for way in ways if way.fuse)
    return (
        ("The ways", tuple(named(way) for way in ways if not way.fuse)),
        ("Fuses", (FUSES_STAY, *fuses) if fuses else ()),
    )


def _neutral(hangs: tuple[Hanging, ...]) -> tuple[str, ...]:
    return (*neutral_lines(_ways(hangs)), *_borrowed(hangs))


def _borrowed(hangs: tuple[Hanging, ...]) -> tuple[str, ...]:
    found = (s for one in hangs if one.button for s in one.borrowed)
    return tuple(f"{where(s)}: that alone can trip an RCD." for s in found)


def _groups(found: tuple[Suspect, ...]) -> tuple[Group, ...]:
    return _by((GROUNDS[s.ground], where(s), _what_to_do(s)) for s in found)


def _what_to_do(suspect: Suspect) -> str:
    missed_as = [CARE[care].lower() for care in suspect.care]
    return ", ".join(["unplug" if suspect.unplugs else "wired in", *missed_as])


def _suspects(hangs: tuple[Hanging, ...]) -> tuple[Suspect, ...]:
    """Return what hangs on any of these, each once, the likeliest first."""
    every = dict.fromkeys(suspect for one in hangs for suspect in one.suspects)
    order = list(GROUNDS)
    return tuple(sorted(every, key=lambda suspect: order.index(suspect.ground)))


def _ways(hangs: tuple[Hanging, ...]) -> tuple[WayBelow, ...]:
    return tuple({way.ref: way for one in hangs for way in one.ways}.values())


def _has_ways(hangs: tuple[Hanging, ...]) -> bool | None:
    """Whether ways hang below what moved; None where nobody knows which it was."""
    return bool(hangs[0].ways) if len(hangs) == 1 else None


def _where(net: Network, item: Moves) -> str:
    board = net.record.find(Board, getattr(item, "board", None))
    return _place(net, board) if board else "Not on a board"


def _place(net: Network, board: Board) -> str:
    room = net.record.find(Room, board.room)
    return f"{board.name}: {room.name}" if room else board.name


def _by(rows: Iterable[tuple[str, str, str]]) -> tuple[Group, ...]:
    """Put rows that share their first column under it."""
    found: dict[str, list[tuple[str, str]]] = {}
    for head, words, more in rows:
        found.setdefault(head, []).append((words, more))
    return tuple((head, tuple(items)) for head, items in found.items())
