"""What a remark is: its rank, what settles it, what it found or what it lacks.

A remark is one module of this package that holds ``KIND`` and ``look``.  Its docstring
is the help text: the first line is the title, and each section is one of `SECTIONS`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from app.domain.record._field import Model, Number, field
from app.domain.remarks._sight import Sight

Rank = Literal["call", "electrician", "knowing", "record"]
RANKS: Mapping[Rank, str] = {
    "call": "Leave it and call",
    "electrician": "Ask an electrician",
    "knowing": "Worth knowing",
    "record": "The record",
}
# What one action settles, the words of the action, in the order of a day's work.
GROUPS: Mapping[str, str] = {
    "call": "Calls to make now",
    "network": "One talk with the network or the supplier",
    "earthing": "One visit: the earthing and the bonding",
    "board": "One visit: the boards",
    "rcd": "One visit: RCD protection",
    "circuits": "One visit: the cables and what they carry",
    "points": "One visit: these points",
    "sources": "Find out what else can feed the home",
    "switching": "Know before you switch off",
    "labels": "Write and fix labels",
    "papers": "Papers to find, ask for or keep up",
    "look": "Look again, and write it down",
}
SECTIONS = ("Looks at", "Why it matters", "What to do", "Source")
EXTRA_SECTION = "Not retrospective"


@dataclass(frozen=True, slots=True, kw_only=True)
class RemarkKind:
    """What a remark's module says of it.

    Attributes:
        code: Readable slug, stored where one is set aside; never changed, never reused.
        rank: How much it matters, and so who acts.
        group: The one action that settles it, a code of `GROUPS`.
        always_tells: Why it never lacks anything to judge by; empty where it may.
    """

    code: str
    rank: Rank
    group: str
    always_tells: str = ""


class Figure(Model):
    """A figure that a remark rests on.

    ``calculated`` is true of what was worked out from the record; the others stand in
    it as they were written down.
    """

    label: str = field("What it is", ...)
    value: Number = field("How much", ...)
    unit: str = field("Unit", "")
    calculated: bool = field("Calculated from your record", default=False)


class Need(Model):
    """Something that is missing before a remark can be judged.

    ``ref`` is the item that lacks it, or the reference of the home.
    """

    ref: str = field("Item that lacks it", ...)
    what: str = field("What is missing", ...)


@dataclass(frozen=True, slots=True)
class Found:
    """A remark, as its module finds it.

    Attributes:
        about: What it looked at, the thing itself first; the home by its reference.
        sentence: What was found, in one or two sentences.
        figures: The figures that it rests on.
    """

    about: tuple[str, ...]
    sentence: str
    figures: tuple[Figure, ...] = ()


@dataclass(frozen=True, slots=True)
class CannotTell:
    """What a remark's module cannot judge, what it needs, or else why it cannot."""

    about: tuple[str, ...]
    needs: tuple[Need, ...]
    why: str = ""


Outcome = Found | CannotTell
Look = Callable[[Sight], Iterator[Outcome]]


class Remark(Model):
    """A remark on the installation or its record; never a verdict on either."""

    code: str = field("Code", ...)
    title: str = field("Title", ...)
    rank: str = field("Rank", ...)
    group: str = field("What one action settles it", ...)
    outcome: str = field("Whether it is a remark, or cannot be told", "remark")
    about: tuple[str, ...] = field("What it looked at, the thing itself first", ())
    sentence: str = field("What was found, or what is missing", ...)
    figures: tuple[Figure, ...] = field("Figures it rests on", ())
    needs: tuple[Need, ...] = field("What is missing before it can be told", ())
    to_do: str = field("What to do, and who may", "")
    source: str = field("Source", "")
    not_retrospective: str = field("Since when, where old work need not follow", "")
    facts: str = field("Mark of the facts it rests on", "")
    aside: str = field("Set aside: no, set, or back since its facts changed", "no")
    aside_ref: str | None = field("What sets it aside")


def figure(
    label: str, value: Decimal | float, unit: str = "", *, calculated: bool = False
) -> Figure:
    """Return a figure, rounded for display to two places."""
    rounded = Decimal(str(value)).quantize(Decimal("0.01"))
    return Figure(label=label, value=rounded, unit=unit, calculated=calculated)


def lacks(ref: str, what: str) -> CannotTell:
    """Return that one fact is missing of one thing."""
    return CannotTell((ref,), (Need(ref=ref, what=what),))


def lacking(about: tuple[str, ...], what: str) -> CannotTell:
    """Return that the same fact is missing of several things."""
    return CannotTell(about, tuple(Need(ref=ref, what=what) for ref in about))
