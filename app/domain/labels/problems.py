"""What is wrong with the labels of a board: two alike, misleading ones, personal ones.

Common practice, no source: one wrong label is worse than none. Each check looks at the
name that would be printed and at the label found; it can only compare them with the
record, which may itself be wrong. A person is known by a word of kinship or by the
possessive; a bare first name is not found.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache, partial

from app.domain.kinds import POINT_KINDS
from app.domain.labels.label import (
    NOT_NAMED,
    Label,
    is_way,
    label_of,
    names_of,
)
from app.domain.labels.printed import ratings_not_read
from app.domain.network import Network, downstream, goes_off
from app.domain.record import Board, Device, Point, Room

SWITCHES = frozenset({"main_switch", "isolator", "changeover"})
BOTH_POLES = ("line_and_neutral", "three_line_and_neutral")
_MAIN = re.compile(r"\bmains?\s+(switch|isolator)\b|^\s*mains?\s*$", re.IGNORECASE)
_SPARE = re.compile(r"\b(spare|not used|unused)\b", re.IGNORECASE)
_PERSON = re.compile(
    r"\b(mum|mam|mummy|dad|daddy|nan|nana|gran|granny|grandma|grandad|grandpa|"
    r"kids?|boys?|girls?|baby|son|daughter|lodger|tenant|my|our|mr|mrs|ms|miss)\b"
    r"|\b[A-Z][a-z]+['’]s\b|\b[A-Z][a-z]+s['’](?=\s)",
    re.IGNORECASE,
)
# What belongs to a thing or a house rather than to a person.
_NO_PERSON = re.compile(
    r"\b(master|guests?|children|boiler|cooker|neighbours?|house|garage|kitchen|cellar|"
    r"landlord|shower|heater|men|women|ladies)['’]s?(?!\w)",
    re.IGNORECASE,
)
_USES = {
    "lights": re.compile(r"\b(lights?|lighting|lamps?)\b", re.IGNORECASE),
    "sockets": re.compile(r"\b(sockets?|skts?|plugs?|ring)\b", re.IGNORECASE),
}
_STOREYS: tuple[tuple[str, frozenset[str], re.Pattern[str]], ...] = (
    (
        "downstairs",
        frozenset({"ground", "cellar", "unknown"}),
        re.compile(r"\b(down|downstairs|ground floor)\b", re.IGNORECASE),
    ),
    (
        "upstairs",
        frozenset({"first", "second", "third", "loft", "unknown"}),
        re.compile(r"\b(up|upstairs|first floor)\b", re.IGNORECASE),
    ),
)
WORDS = {
    "no_main_switch": "Misleading",
    "not_spare": "Misleading",
    "other_use": "Misleading",
    "other_room": "Misleading",
    "other_storey": "Misleading",
    "rating": "Not read",
    "no_name": "No name",
    "same_number": "Two alike",
    "same_name": "Two alike",
    "personal": "Personal",
}
_WORD = re.compile(r"\w+")
NAME, FOUND = "The name", "The label found"


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelProblem:
    """Something wrong with one label or with several.

    Attributes:
        code: Which check found it, one of ``WORDS``.
        ways: References of the devices.
        sentence: What is wrong, and what to do.
    """

    code: str
    ways: tuple[str, ...]
    sentence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Way:
    """A device with its label, and the points that it feeds."""

    device: Device
    label: Label
    name: str
    points: tuple[Point, ...]
    rooms: tuple[Room, ...]

    @property
    def texts(self) -> tuple[tuple[str, str], ...]:
        """What is or would be written there, the name first."""
        said = ((NAME, self.name), (FOUND, self.label.found or ""))
        return tuple((whose, text) for whose, text in said if text)


def label_problems(net: Network, board: Board) -> tuple[LabelProblem, ...]:
    """Return what is wrong with a board's labels, what misleads first."""
    return net.keep(f"label problems of {board.ref}", partial(_problems, net, board))


def _problems(net: Network, board: Board) -> tuple[LabelProblem, ...]:
    ways = tuple(_way(net, d) for d in net.record.devices_of(board.ref))
    single = (found for check in CHECKS for way in ways for found in check(net, way))
    misleading = tuple(single)
    alike = (*_same_number(ways), *_same_name(net, ways))
    personal = tuple(found for way in ways for found in _personal(way))
    return (*misleading, *alike, *personal)


def _way(net: Network, device: Device) -> _Way:
    fed = downstream(net, device.ref)
    points = net.record.points_among(fed)
    served = (net.record.find(Room, ref) for ref in {point.room for point in points})
    return _Way(
        device=device,
        label=label_of(net, device),
        name=" + ".join(names_of(net, device)) if is_way(net, device) else "",
        points=points,
        rooms=tuple(room for room in served if room),
    )


def _problem(code: str, way: _Way, sentence: str) -> LabelProblem:
    return LabelProblem(
        code=code, ways=(way.device.ref,), sentence=f"{way.label.called}: {sentence}"
    )


def _no_main_switch(net: Network, way: _Way) -> Iterator[LabelProblem]:
    for whose, text in way.texts:
        if _MAIN.search(text) and not _switches_board(net, way.device):
            yield _problem(
                "no_main_switch",
                way,
                f"{whose.lower()} is “{text}”, but the record does not show that it "
                "takes the whole board off, line and neutral. Do not trust it to.",
            )


def _switches_board(net: Network, device: Device) -> bool:
    """Return whether a device is a main switch, or does what one does.

    An RCD that all of a board hangs on does, if the record says that it breaks both.
    """
    if device.kind in SWITCHES:
        return True
    others = {other.ref for other in net.record.devices_of(device.board)} - {device.ref}
    return device.poles in BOTH_POLES and others <= goes_off(net, device.ref)


def _not_spare(_net: Network, way: _Way) -> Iterator[LabelProblem]:
    used = bool(way.points) or way.device.in_use == "in_use"
    if way.device.in_use == "spare" and way.points:
        yield _problem(
            "not_spare", way, "it is recorded as spare, and feeds points. One is wrong."
        )
    for whose, text in way.texts:
        if _SPARE.search(text) and used:
            yield _problem(
                "not_spare",
                way,
                f"{whose.lower()} is “{text}”, but by the record it is in use.",
            )


def _other_use(_net: Network, way: _Way) -> Iterator[LabelProblem]:
    groups = {POINT_KINDS[point.kind].group for point in way.points}
    for whose, text in way.texts:
        for group, words in _USES.items():
            if way.points and words.search(text) and group not in groups:
                yield _problem(
                    "other_use",
                    way,
                    f"{whose.lower()} is “{text}”, but no {group} are recorded on it.",
                )


def _other_room(net: Network, way: _Way) -> Iterator[LabelProblem]:
    served = {room.name.casefold() for room in way.rooms}
    for whose, text in way.texts if way.rooms else ():
        for room in _rooms_named(net, text):
            if not _is_among(room.name, served):
                yield _problem(
                    "other_room",
                    way,
                    f"{whose.lower()} is “{text}”, but by the record it feeds nothing "
                    f"in {room.name}.",
                )


def _rooms_named(net: Network, text: str) -> list[Room]:
    """Return the rooms that a text names, in their order."""
    by_word = net.keep("rooms by their first word", partial(_by_first_word, net))
    words = {"", *_WORD.findall(text.casefold())}
    likely = sorted(place for word in words for place in by_word.get(word, ()))
    rooms = (net.record.rooms[place] for place in likely)
    return [room for room in rooms if _names(text, room.name)]


def _by_first_word(net: Network) -> dict[str, list[int]]:
    """Return the places of rooms in the record; without a word to begin with by ""."""
    found: dict[str, list[int]] = {}
    for place, room in enumerate(net.record.rooms):
        first = _WORD.match(room.name.casefold())
        found.setdefault(first[0] if first else "", []).append(place)
    return found


def _other_storey(_net: Network, way: _Way) -> Iterator[LabelProblem]:
    storeys = {room.storey for room in way.rooms}
    for whose, text in way.texts if way.rooms else ():
        for where, allowed, words in _STOREYS:
            if words.search(text) and not storeys & allowed:
                yield _problem(
                    "other_storey",
                    way,
                    f"{whose.lower()} is “{text}”, but by the record it feeds nothing "
                    f"{where}.",
                )


def _rating(_net: Network, way: _Way) -> Iterator[LabelProblem]:
    for rating in ratings_not_read(way.name, way.device):
        yield _problem(
            "rating",
            way,
            f"the name says {rating}, which is not what was read from the device. "
            "It is left out on the label.",
        )


def _no_name(_net: Network, way: _Way) -> Iterator[LabelProblem]:
    if way.label.name == NOT_NAMED:
        yield _problem("no_name", way, "its circuit has no name yet. Give it one.")


def _personal(way: _Way) -> Iterator[LabelProblem]:
    for whose, text in way.texts:
        hit = _PERSON.search(_NO_PERSON.sub("", text))
        if hit:
            yield _problem(
                "personal",
                way,
                f"{whose.lower()} is “{text}”. Name the room, not the person: people "
                "move, and strangers read it.",
            )


def _same_number(ways: tuple[_Way, ...]) -> Iterator[LabelProblem]:
    for number, group in _alike(ways, lambda way: way.device.way.casefold()):
        yield LabelProblem(
            code="same_number",
            ways=tuple(way.device.ref for way in group),
            sentence=f"{len(group)} devices carry the number {number.upper()}. Give "
            "each its own.",
        )


def _same_name(net: Network, ways: tuple[_Way, ...]) -> Iterator[LabelProblem]:
    for name, group in _alike(ways, lambda way: _plain(way.name)):
        circuits = {net.record.circuits_of(way.device.ref) for way in group}
        shown = next(way.name for way in group if _plain(way.name) == name)
        numbers = ", ".join(way.label.called for way in group)
        if len(circuits) == 1:
            why = "They are one circuit on several ways: switch all of them together."
        else:
            why = "Say what tells them apart, such as the storey or the side."
        yield LabelProblem(
            code="same_name",
            ways=tuple(way.device.ref for way in group),
            sentence=f"{numbers} have the same name, “{shown}”. {why}",
        )


def _alike(
    ways: tuple[_Way, ...], key: Callable[[_Way], str]
) -> Iterator[tuple[str, tuple[_Way, ...]]]:
    """Yield each text that several ways have, with them."""
    for text in dict.fromkeys(map(key, ways)):
        group = tuple(way for way in ways if key(way) == text)
        if text and len(group) > 1:
            yield text, group


def _plain(text: str) -> str:
    return " ".join(re.sub(r"[^\w\s]", " ", text).casefold().split())


def _names(text: str, room: str) -> bool:
    return bool(_named(room).search(text))


@lru_cache(maxsize=4096)
def _named(room: str) -> re.Pattern[str]:
    return re.compile(rf"\b{re.escape(room)}\b", re.IGNORECASE)


def _is_among(room: str, served: set[str]) -> bool:
    """A room served whose name holds this one counts too: Bedroom in Bedroom 2."""
    return any(_names(name, room) for name in served)


CHECKS: tuple[Callable[[Network, _Way], Iterator[LabelProblem]], ...] = (
    _no_main_switch,
    _not_spare,
    _other_use,
    _other_room,
    _other_storey,
    _rating,
    _no_name,
)
