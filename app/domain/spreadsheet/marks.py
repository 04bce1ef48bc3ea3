"""What is printed on a device, and how a cable is written: several facts in one cell.

Common practice, no source: B32 is type B and 32 A; 2.5/1.5 is the line conductor and
the protective one, in mm².
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from app.domain.kinds import DEVICE_KINDS
from app.domain.spreadsheet.values import UnreadableError, plain, tidied
from app.domain.spreadsheet.words import CABLES, DEVICES

DIGITS = r"([0-9]+(?:[.,][0-9]+)?)"
# In this order: what stands first takes its letters away from what follows.
PATTERNS: tuple[tuple[str, re.Pattern[str]], ...] = (
    (
        "breaking_capacity_ka",
        re.compile(rf"(?<![\w.]){DIGITS}\s?kA(?!\w)", re.IGNORECASE),
    ),
    (
        "residual_current_ma",
        re.compile(rf"(?<![\w.]){DIGITS}\s?mA(?!\w)", re.IGNORECASE),
    ),
    ("mark", re.compile(rf"(?<!\w)([BCD])\s?-?{DIGITS}\s?A?(?!\w)", re.IGNORECASE)),
    (
        "rated_current_a",
        re.compile(rf"(?<![\w.]){DIGITS}\s?(?:A|amps?)(?!\w)", re.IGNORECASE),
    ),
    ("type", re.compile(r"(?<!\w)type\s?(AC|[ABCDF1-4])(?!\w)", re.IGNORECASE)),
)
KIND_WORDS: dict[str, str] = {
    **DEVICES,
    **{plain(kind.label): kind.code for kind in DEVICE_KINDS.values()},
}
KINDS = {word.replace(" ", ""): code for word, code in KIND_WORDS.items()}
# What in a label can only be the device: a “time switch” may be what the way feeds.
PLAIN_WORDS = (
    "rcbo", "mcb", "rccb", "rcd", "afdd", "spd", "main switch", "main isolator",
    "blank", "bs 3036", "3036", "bs 1361", "1361", "bs 88 3",
)  # fmt: skip


def _finding(words: Iterable[str]) -> re.Pattern[str]:
    """Return what finds these words; the longest first, lest it find a part of one."""
    ordered = sorted(words, key=len, reverse=True)
    parts = "|".join(re.escape(w).replace(r"\ ", r"[\s-]?") for w in ordered)
    return re.compile(rf"(?<!\w)({parts})(?!\w)", re.IGNORECASE)


ANY_KIND = _finding(word for word in KIND_WORDS if word != "not known")
IN_LABEL = _finding(PLAIN_WORDS)
SIZES = re.compile(
    rf"(?<![\w.]){DIGITS}\s?(?:mm²|mm2|mm)?\s?[/+]\s?{DIGITS}\s?(?:mm²|mm2|mm)?(?!\w)",
    re.IGNORECASE,
)
SIZE = re.compile(rf"(?<![\w.]){DIGITS}\s?(?:mm²|mm2|mm)?(?!\w)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Marks:
    """What a text says of a device.

    Attributes:
        values: By the names of its fields.
        taken: The parts of the text that say so.
        rest: What is left of the text.
    """

    values: dict[str, Any]
    taken: str
    rest: str


def device_marks(text: str, kinds: re.Pattern[str]) -> Marks:
    """Return what a text says of a device, and what is left of it.

    Args:
        text: Such as ``B32 RCBO 30 mA``, or a label with that behind it.
        kinds: Finds the words for a kind of device that count.
    """
    found: dict[str, Any] = {}
    taken: list[str] = []
    rest = tidied(text)
    for name, pattern in PATTERNS:
        hit = pattern.search(rest)
        if hit and not _read_before(name, hit, found):
            _note(name, hit, found)
            taken.append(hit[0])
            rest = _without(rest, hit)
    if hit := kinds.search(rest):
        found["kind"] = KINDS[plain(hit[1]).replace(" ", "")]
        taken.append(hit[0])
        rest = _without(rest, hit)
    return Marks(_settled(found), " ".join(taken), rest)


def whole_device(text: str) -> dict[str, Any]:
    """Return what a cell about a device alone says.

    Raises:
        UnreadableError: Something in it says nothing about a device.
    """
    found = device_marks(text, ANY_KIND)
    if found.rest or not found.values:
        where = _at(found.rest, text)
        raise UnreadableError(f"is not understood{where}; such as 32 A, B32 or RCBO")
    return found.values


def cable_sizes(text: str) -> dict[str, Any]:
    """Return the line and protective conductor and the kind of cable that a cell names.

    Raises:
        UnreadableError: Something in it says nothing about a cable.
    """
    rest = tidied(text)
    found: dict[str, Any] = {}
    if hit := SIZES.search(rest):
        found = {"line_mm2": _figure(hit[1]), "cpc_mm2": _figure(hit[2])}
        rest = _without(rest, hit)
    elif hit := SIZE.search(rest):
        found = {"line_mm2": _figure(hit[1])}
        rest = _without(rest, hit)
    if rest:
        cable = CABLES.get(plain(rest.replace("+", " and ")))
        if cable is None:
            raise UnreadableError(
                f"is not understood{_at(rest, text)}; such as 2.5/1.5 mm²"
            )
        found["cable"] = cable
    return found


def _at(rest: str, text: str) -> str:
    return f" at “{rest[:30]}”" if rest and rest != tidied(text) else ""


def _read_before(name: str, hit: re.Match[str], found: dict[str, Any]) -> bool:
    """A rating beside a mark that has one stays, so that nothing is overruled."""
    if name != "rated_current_a" or "mark" not in found:
        return False
    return bool(_figure(hit[1]) != found["mark"][1])


def _note(name: str, hit: re.Match[str], found: dict[str, Any]) -> None:
    if name == "mark":
        found[name] = (hit[1].upper(), _figure(hit[2]))
    else:
        found[name] = hit[1].upper() if name == "type" else _figure(hit[1])


def _settled(found: dict[str, Any]) -> dict[str, Any]:
    """Turn marks and types into fields: B32 is a type and a rating."""
    curve, rating = found.pop("mark", (None, None))
    if curve:
        found |= {"curve": curve, "rated_current_a": rating}
    kind = found.pop("type", None)
    if kind in ("AC", "A", "F") or (kind == "B" and found.get("kind") == "rcd"):
        found["rcd_type"] = kind
    elif kind:
        found.setdefault("curve", kind)
    return found


def _without(text: str, hit: re.Match[str]) -> str:
    joined = f"{text[: hit.start()]} {text[hit.end() :]}"
    return tidied(re.sub(r"\(\s*\)", " ", joined)).strip(" ,;:-–")


def _figure(digits: str) -> Decimal:
    return Decimal(f"{Decimal(digits.replace(',', '.')).normalize():f}")
