"""What is known of a point, in sentences: the answer, and the readings that say so."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

from app.domain.record import Board, Device, Record
from app.domain.trace.state import NONE, Pair, PointState

Naming = Callable[[str], str]
MOST_NAMED = 4
DARK = "Dead with everything on, so switching off shows nothing."
OWN_BATTERY = "It has a battery of its own: that it stays on says nothing of its feed."
PERHAPS_BATTERY = "a battery of its own, of which nobody wrote, may have kept it on"
NEVER_LIVE = (
    "it was never seen live at that time of day, so it may have been dead all along"
)


def naming(record: Record) -> Naming:
    """Return how ways, points and rounds are called; ways with their board."""

    @cache
    def called(ref: str) -> str:
        item = record.by_ref.get(ref)
        board = record.find(Board, item.board) if isinstance(item, Device) else None
        title = item.title if item else ref
        return f"{title} on {board.name}" if board and len(record.boards) > 1 else title

    return called


def answer_of(state: PointState, named: Naming) -> str:
    """Return the answer in a sentence; ``named`` says what a way is called."""
    if state.status == "found" and state.way:
        return f"On {named(state.way)}{_sure(state)}"
    if state.status == "unaffected":
        return f"On none of these ways{_sure(state)}"
    if state.status == "several_fit":
        return _several(state.candidates, named)
    if state.status == "more_than_one_way":
        return f"On more than one way: {pairs_of(state, named)}."
    if state.status == "contradiction":
        return "No explanation fits all that was seen: one reading is wrong."
    return OWN_BATTERY if state.kept_on_in else DARK


def reasons_of(state: PointState, named: Naming) -> tuple[str, ...]:
    """Return the readings that say so, and what to look at again."""
    told = (
        ("Went dead in", state.dead_in),
        ("Live in", state.live_in),
        ("Stayed on, perhaps by its own battery, in", state.kept_on_in),
        ("Tells nothing, as it was dead with everything on:", state.ignored),
        ("Seen differently by two people, so not counted:", state.disputed),
    )
    reasons = [
        f"{words} {', '.join(map(named, rounds))}." for words, rounds in told if rounds
    ]
    reasons += [
        f"If {named(each.look)} was misread, it is on {named(each.way)}: look again."
        for each in state.misread
    ]
    return tuple(reasons or ["Not looked at in any round."])


def _sure(state: PointState) -> str:
    if not state.was_live:
        return f", not confirmed yet: {NEVER_LIVE}."
    if state.perhaps_battery and state.status == "unaffected":
        return f", but not confirmed: {PERHAPS_BATTERY}."
    stands = " it would stand if any one reading were wrong."
    if state.confirmed:
        pairs = " no two ways would explain the readings as well."
        return f", confirmed:{stands if state.steady else pairs}"
    if state.as_sure_as_can_be:
        more = f";{stands}" if state.steady else "."
        return f": as sure as switching off can make it{more}"
    return ", not confirmed yet: two ways together would explain it as well."


def _several(candidates: tuple[str, ...], named: Naming) -> str:
    # It stands first, where it is among them.
    nones = int(candidates[:1] == (NONE,))
    if len(candidates) - nones > MOST_NAMED:
        none = " or none of them" if nones else ""
        return f"Not narrowed down yet: {len(candidates) - nones} ways{none} still fit."
    ways = [named(way) for way in candidates if way != NONE]
    names = [*ways, "none of these ways"] if nones else ways
    *first, last = names
    more = ";" if len(first) > 1 else ""
    return f"May be on {'; '.join(first)}{more} or {last}."


def pairs_of(state: PointState, named: Naming) -> str:
    """Return the pairs of ways that explain a point, as the end of a sentence."""
    if len(state.either) + len(state.both) > MOST_NAMED:
        return "many pairs fit"
    pairs = [f"dead with either of {_pair(p, named)}" for p in state.either]
    pairs += [f"dead only with both {_pair(p, named)} off" for p in state.both]
    return "; or ".join(pairs)


def _pair(pair: Pair, named: Naming) -> str:
    return f"{named(pair[0])} and {named(pair[1])}"
