"""One cell's text as one value of the record; or a sentence why it is none."""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping
from decimal import Decimal, InvalidOperation
from functools import cache, lru_cache
from typing import Any

from app.domain.record import LONG, REF_PATTERN, SORTS, FieldSpec, specs
from app.domain.spreadsheet.shapes import FORMULA
from app.domain.spreadsheet.words import BY_FIELD, YES_NO

NOT_SAID = frozenset(
    {
        "", "-", "--", "–", "—", "?", "??", "n/k", "nk", "n/a", "not known", "unknown",
        "tbc",
    }
)  # fmt: skip
# What a spreadsheet program writes where a formula has no result.
ERRORS = frozenset(
    {
        "#n/a",
        "#ref!",
        "#value!",
        "#div/0!",
        "#name?",
        "#num!",
        "#null!",
        "#getting_data",
    }
)
# Control characters, and code points that are no characters.
UNSEEN = re.compile(r"[\x00-\x1f\x7f-\x9f\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]")
NUMBER = re.compile(r"([+-]?[0-9][0-9 .,]*)\s*([^\d\s].*)?")
# A comma may stand for the point, but 7,200 is seven thousand to most readers here.
THOUSANDS = re.compile(r"[1-9][0-9]{0,2}(,[0-9]{3})+(\.[0-9]*)?")
UNITS: Mapping[str, Mapping[str, Decimal]] = {
    "A": {"a": Decimal(1), "amp": Decimal(1), "amps": Decimal(1)},
    "mA": {"ma": Decimal(1)},
    "kA": {"ka": Decimal(1), "a": Decimal("0.001")},
    "mm²": {name: Decimal(1) for name in ("mm2", "mm", "sqmm", "mm^2", "sq mm")},
    "m": {name: Decimal(1) for name in ("m", "metre", "metres", "mtr", "mtrs")},
    "mm": {"mm": Decimal(1), "m": Decimal(1000)},
    "W": {"w": Decimal(1), "watts": Decimal(1), "kw": Decimal(1000)},
    "m²": {name: Decimal(1) for name in ("m2", "sqm", "sq m", "m^2")},
    "°C": {name: Decimal(1) for name in ("c", "°c", "degc")},
}


class UnreadableError(ValueError):
    """A cell that says something which the record cannot hold; its text says why."""


def tidied(text: str) -> str:
    """Return what a screen shows of a text, on one line."""
    plain = re.sub(r"[\s\xa0]+", " ", text)
    return UNSEEN.sub("", plain).strip()


@lru_cache(maxsize=8192)
def plain(text: str) -> str:
    """Return a text as words are looked up by: no case, no marks between."""
    lower = (
        tidied(text)
        .casefold()
        .replace("&", " and ")
        .replace("²", "2")
        .replace("_", " ")
    )
    return " ".join(re.sub(r"[^\w/#?.]+", " ", lower.replace("/", " ")).split())


def says_nothing(text: str) -> bool:
    """Return whether a cell leaves its question open."""
    return tidied(text).casefold() in NOT_SAID


def value_of(spec: FieldSpec, sort: str, text: str) -> Any:
    """Return what a cell says of a field; None where it leaves it open.

    Raises:
        UnreadableError: It says what the field cannot hold.
    """
    readable(text)
    shown = tidied(text)
    if spec.name == "label_found" and shown == "-":
        return ""
    if says_nothing(shown):
        return None
    if spec.type in ("int", "decimal"):
        return number(spec, shown)
    if spec.type == "choice":
        return choice(spec, sort, shown)
    if spec.type == "choices":
        parts = re.split(r"[,;/+]", shown)
        found = [choice(spec, sort, part) for part in parts if tidied(part)]
        return tuple(dict.fromkeys(found))
    return _text(spec, shown)


def readable(text: str) -> None:
    """Refuse a cell that holds no value at all.

    Raises:
        UnreadableError: It holds an error, or a formula without its result.
    """
    if text == FORMULA:
        raise UnreadableError(
            "holds a formula, and the file does not hold its result. Open it in the "
            "spreadsheet program and save it, or write the value itself"
        )
    if tidied(text).casefold() in ERRORS:
        raise UnreadableError("is an error that a formula left; write the value itself")


def number(spec: FieldSpec, text: str) -> Decimal | int:
    """Return a number, with its unit or without.

    Raises:
        UnreadableError: It is none, or out of bounds.
    """
    value = quantity(text, spec.unit)
    if spec.nonzero and value == 0:
        raise UnreadableError("is not above 0; leave it open where it is not known")
    low, high = spec.low, spec.high
    if (low is not None and value < low) or (high is not None and value > high):
        raise UnreadableError(f"is not within {low} to {high}")
    if spec.type == "int":
        if value != value.to_integral_value():
            raise UnreadableError("is no whole number")
        return int(value)
    if value != round(value, 4):
        raise UnreadableError("has more than four digits after the point")
    return Decimal(f"{value.normalize():f}")


def quantity(text: str, unit: str) -> Decimal:
    """Return a number in a unit, whichever the text has.

    Raises:
        UnreadableError: It is no number, or in another unit.
    """
    asked = f", such as 2.5 {unit}".rstrip()
    found = NUMBER.fullmatch(text)
    if found is None:
        raise UnreadableError(f"is no number{asked}")
    digits, suffix = found[1].replace(" ", ""), tidied(found[2] or "").casefold()
    if THOUSANDS.fullmatch(digits):
        raise UnreadableError("may be read in two ways: write 7200 or 7.2")
    try:
        value = Decimal(digits.replace(",", "."))
    except InvalidOperation:
        raise UnreadableError(f"is no number{asked}") from None
    if not suffix:
        return value
    times = UNITS.get(unit, {}).get(suffix.replace("²", "2").rstrip("."))
    if times is None:
        own = f" in {unit}" if unit else ""
        raise UnreadableError(f"is no number{own}: it ends in “{suffix[:20]}”")
    return value * times


def choice(spec: FieldSpec, sort: str, text: str) -> str:
    """Return the code that a word stands for: by code, by its words, by the trade's.

    Raises:
        UnreadableError: It stands for none.
    """
    by_word = words_of(sort, spec.name)
    word = plain(text)
    for tried in (word, word.removesuffix("s"), f"{word}s"):
        if tried in by_word:
            return by_word[tried]
    near = difflib.get_close_matches(word[:60], by_word, n=1, cutoff=0.75)
    if near:
        hint = f"Is it “{spec.choices[by_word[near[0]]]}”?"
    else:
        some = [words for code, words in spec.choices.items() if code != "unknown"]
        more = ", …" if len(some) > 6 else ""
        hint = f"There are: {', '.join(some[:6])}{more}"
    raise UnreadableError(f"is none of its choices. {hint}")


@cache
def words_of(sort: str, name: str) -> Mapping[str, str]:
    """Return every word by which a choice may be named, with its code."""
    spec = next(spec for spec in specs(SORTS[sort]) if spec.name == name)
    own = {plain(code.replace("_", " ")): code for code in spec.choices}
    own |= {plain(words): code for code, words in spec.choices.items()}
    trade = BY_FIELD.get(f"{sort}.{spec.name}", {})
    yes_no = YES_NO if "yes" in spec.choices else {}
    return own | {w: c for w, c in (yes_no | dict(trade)).items() if c in spec.choices}


def _text(spec: FieldSpec, shown: str) -> str:
    most = LONG if spec.type == "long" else spec.max_length
    if len(shown) > most:
        raise UnreadableError(f"is {len(shown)} characters long; {most} is the most")
    if spec.name == "ref" and not re.fullmatch(REF_PATTERN, shown):
        raise UnreadableError(
            "is no reference: up to 32 letters, digits, dots and hyphens"
        )
    return shown
