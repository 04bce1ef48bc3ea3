"""It has tripped: one question a screen, from what has moved to whom to call.

The screens are data: each has its words and its choices, and a choice names the screen
that follows.  What must stop everything is asked before anything is touched.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

Shows = Literal["nothing", "boards", "suspects", "ways", "neutral", "call", "tell"]
Names = Literal["nothing", "device", "way", "point"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Screen:
    """One screen.

    Attributes:
        code: Its name in addresses.
        title: What it says first, in big type.
        says: Sentences below it.
        choices: Code of the screen that follows each answer, with its words.
        shows: What of the record stands on it.
        names: What of the record is named before it is shown.
        stop: Whether it is an end at which nothing more is switched.
        resets: Whether it asks for something to be switched on.
        why: Why it is asked; empty where it is plain.
        called: What it is called where the trail is told; else its title.
    """

    code: str
    title: str
    says: tuple[str, ...]
    choices: Mapping[str, str]
    shows: Shows = "nothing"
    names: Names = "nothing"
    stop: bool = False
    resets: bool = False
    why: str = ""
    called: str = ""


FIRST = "stop"
_SCREENS = (
    Screen(
        code="stop",
        title="Before you touch anything",
        says=(
            "Water on or near the board or the thing that failed?",
            "A smell of burning, heat, buzzing, smoke or scorch marks?",
            "A cable drilled or cut, or anything broken open?",
            "Did someone get a shock or a tingle?",
        ),
        choices={
            "leave": "Yes, or I am not sure",
            "at-work": "A lock, a notice, somebody at work",
            "moved": "No, none of these",
        },
        why="Any of these means that switching on again can hurt someone.",
        called="Water, burning, damage or a shock",
    ),
    Screen(
        code="at-work",
        title="Leave it off and ask",
        says=(
            "It may be off on purpose, with somebody's hands on the wires.",
            "Only who hung the lock or the notice takes it off and switches on.",
        ),
        choices={"tell": "Nobody here knows of it"},
        stop=True,
    ),
    Screen(
        code="leave",
        title="Leave it off and call",
        says=(
            "Do not switch it on again, and keep others away.",
            "Smoke or fire: get out and call 999.",
        ),
        choices={"tell": "What to tell them"},
        shows="call",
        stop=True,
    ),
    Screen(
        code="moved",
        title="What has moved?",
        says=(
            "Look at the front of each board, by torch if need be. Covers stay on.",
            "A tripped switch may stand in the middle, not all the way down.",
        ),
        choices={
            "rcd": "A device with a test button",
            "breaker": "A circuit-breaker without one",
            "fuse": "A fuse, or I cannot tell",
            "main": "The main switch",
            "nothing": "Nothing on any board",
        },
        shows="boards",
    ),
    Screen(
        code="rcd",
        title="Unplug what hangs on it",
        says=(
            "Unplug, rather than switch off: a switch may leave one wire joined.",
            (
                "Start at the top of the list. What is wired in: switch it off at its "
                "own switch."
            ),
        ),
        choices={"rcd-on": "Done", "leave": "I saw damage or water"},
        shows="suspects",
        names="device",
        why="It trips when current leaks to earth: most often water, a heating element "
        "or a motor.",
    ),
    Screen(
        code="rcd-on",
        title="Switch it on, once",
        says=(
            "Push it right down to off first, then up.",
            "Does it stay on?",
        ),
        choices={
            "plug-in": "It stays on",
            "ways-off": "It trips again",
            "fault": "It trips again",
        },
        resets=True,
    ),
    Screen(
        code="plug-in",
        title="Plug in one thing at a time",
        says=(
            "Wait a minute after each. The one that trips it stays unplugged.",
            "It may need its heat or its motor to run before it fails.",
        ),
        choices={"found": "One thing trips it", "holds": "It holds with all back on"},
        shows="suspects",
        resets=True,
    ),
    Screen(
        code="ways-off",
        title="Switch off every way below it",
        says=(
            "All of them, not only the likely one.",
            "Then switch the tripped device on, once more and no further.",
        ),
        choices={
            "way-by-way": "Now it stays on",
            "neutral": "It still trips",
            "fault": "It has no way below it",
        },
        shows="ways",
        resets=True,
    ),
    Screen(
        code="way-by-way",
        title="Switch on one way at a time",
        says=(
            "The way that trips it stays off. The others can be on.",
            "That way's points are where the fault is.",
        ),
        choices={"fault": "One way trips it", "holds": "It holds with all on"},
        shows="ways",
        resets=True,
    ),
    Screen(
        code="neutral",
        title="Leave it off and call an electrician",
        says=(
            (
                "It trips with every way off. Ways that break one wire only leave the "
                "neutrals joined, so a neutral that touches earth still trips it."
            ),
            "Nothing at the board will find that without opening it.",
        ),
        choices={"tell": "What to tell them"},
        shows="neutral",
        stop=True,
    ),
    Screen(
        code="breaker",
        title="Switch off and unplug what hangs on it",
        says=(
            "It trips on too much load, or on a short circuit.",
            "Was something heavy switched on just before, or a lamp blown?",
        ),
        choices={"breaker-on": "Done", "leave": "I saw damage or water"},
        shows="suspects",
        names="device",
    ),
    Screen(
        code="breaker-on",
        title="Switch it on, once",
        says=("Push it right down to off first, then up.", "Does it stay on?"),
        choices={"plug-in": "It stays on", "fault": "It trips again"},
        resets=True,
    ),
    Screen(
        code="fuse",
        title="Leave the fuse where it is",
        says=(
            (
                "A fuse carrier is drawn only after its main switch is off, and never "
                "behind a seal."
            ),
            (
                "A fuse that blew has a reason. Unplug what hangs on it and call an "
                "electrician, unless you know how and what fits: never a thicker wire "
                "or a larger fuse."
            ),
        ),
        choices={"tell": "What to tell them"},
        shows="suspects",
        names="device",
        stop=True,
    ),
    Screen(
        code="main",
        title="Is there a test button on it?",
        says=(
            "A plain main switch does not trip: someone moved it, or it failed.",
            "One with a test button is an RCD for the whole board.",
        ),
        choices={
            "rcd": "Yes, it has a button",
            "neutral-main": "No, it is plain",
        },
    ),
    Screen(
        code="neutral-main",
        title="Ask who moved it",
        says=(
            "Someone may be at work: do not switch on before you know.",
            "If no one moved it, leave it off and call an electrician.",
        ),
        choices={"tell": "What to tell them"},
        shows="call",
        stop=True,
    ),
    Screen(
        code="nothing",
        title="Are the neighbours off too?",
        says=(
            (
                "Look at street lamps and other windows. A prepayment meter may have "
                "run out; a meter's screen tells."
            ),
            "The cut-out, its fuse and the meter are not yours to open.",
        ),
        choices={
            "network": "Yes, or I cannot tell",
            "network-one": "No, only here",
            "point": "Only some things here are off",
        },
    ),
    Screen(
        code="network",
        title="Call the network",
        says=("It is a power cut, or looks like one. Switch off what heats.",),
        choices={},
        shows="call",
        stop=True,
    ),
    Screen(
        code="network-one",
        title="Call the network or the supplier",
        says=(
            "With nothing moved on any board, the fault may lie on their side.",
            "Do not open or pull anything at the meter or the cut-out.",
        ),
        choices={},
        shows="call",
        stop=True,
    ),
    Screen(
        code="point",
        title="Look closer to the thing",
        says=(
            (
                "A fused connection unit, a plug's fuse, an RCD in a socket or a "
                "switch on the way may be off."
            ),
            "If two things in different rooms failed together, tell an electrician.",
        ),
        choices={"tell": "What to tell them"},
        stop=True,
    ),
    Screen(
        code="found",
        title="Leave that one unplugged",
        says=("Have it mended or replaced. The rest can stay on.",),
        choices={"tell": "Write it down"},
        names="point",
        stop=True,
    ),
    Screen(
        code="fault",
        title="Leave that way off and call an electrician",
        says=(
            "The fault is in the wiring or in something wired in.",
            "The other ways can stay on if they hold.",
        ),
        choices={"tell": "What to tell them"},
        shows="call",
        names="way",
        stop=True,
    ),
    Screen(
        code="holds",
        title="It holds for now",
        says=(
            (
                "A fault that comes and goes is still a fault: note weather, time and "
                "what was running."
            ),
            "If it trips again, stop here and call an electrician.",
        ),
        choices={"tell": "Write it down"},
        stop=True,
    ),
    Screen(
        code="tell",
        title="What to tell the electrician",
        says=("Read this out, and add what only you know.",),
        choices={},
        shows="tell",
        stop=True,
    ),
)
SCREENS: dict[str, Screen] = {screen.code: screen for screen in _SCREENS}


def trail(codes: tuple[str, ...]) -> tuple[Screen, ...] | None:
    """Return the screens of a walk from the first one; None if it is no such walk.

    Args:
        codes: The screens chosen one after the other, without the first.
    """
    walked = [SCREENS[FIRST]]
    for code in codes:
        if code not in walked[-1].choices:
            return None
        walked.append(SCREENS[code])
    return tuple(walked)


def choices_of(screen: Screen, *, ways_below: bool | None) -> dict[str, str]:
    """Return the answers of a screen that fit what has moved.

    Args:
        screen: The screen.
        ways_below: Whether ways hang below the device that moved; None where that is
            not known.  A device that is a way itself has none to switch off.
    """
    choices = dict(screen.choices)
    if {"ways-off", "fault"} <= {*choices}:
        choices.pop("ways-off" if ways_below is False else "fault")
    elif screen.code == "ways-off" and ways_below:
        choices.pop("fault")
    return choices


def asked(walked: tuple[Screen, ...]) -> tuple[Names, ...]:
    """Return what of the record a walk has to name, in the order in which it is asked.

    A way is asked for where it was found by switching on one at a time; else it is the
    device that moved.
    """
    found: list[Names] = []
    for before, screen in pairwise(walked):
        narrowed = screen.names != "way" or before.code == "way-by-way"
        if screen.names != "nothing" and narrowed:
            found.append(screen.names)
    return tuple(found)
