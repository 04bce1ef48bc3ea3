"""Warning signs at the intake: what to do, what to leave, and who has to know.

Basis: guides of the trade for meter staff list the same items in graded classes (seen
in part); the advice to take load off, keep others away and tell them is theirs.  The
rest is from memory.  Each sign carries its own basis.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from app.domain.kinds import INTAKE_KINDS
from app.domain.record import IntakeItem, Record

Who = Literal["fire", "network", "supplier", "electrician", "landlord"]
Urgency = Literal["now", "today", "report", "plan"]

URGENCIES: dict[Urgency, str] = {
    "now": "Now",
    "today": "The same day",
    "report": "Report it",
    "plan": "Before any work there",
}
_GUIDES = "Guides of the trade for meter staff, seen in part; the rest from memory"
_MEMORY = "From memory"


@dataclass(frozen=True, slots=True, kw_only=True)
class Sign:
    """One warning sign.

    Attributes:
        code: Its name, and its anchor on a page.
        short: What it is, in a few words.
        seen: What is seen, heard or smelled.
        urgency: How soon, a key of :data:`URGENCIES`.
        who: Whom to call, in this order.
        say: What to say.
        meanwhile: What to do until they come.
        leave: What not to do.
        basis: Where this stands, and how well that is known.
        conditions: Conditions of an item in the record that are this sign.
        seals: What the record says of a seal that is this sign.
    """

    code: str
    short: str
    seen: str
    urgency: Urgency
    who: tuple[Who, ...]
    say: str
    meanwhile: str
    leave: str
    basis: str = _GUIDES
    conditions: tuple[str, ...] = ()
    seals: tuple[str, ...] = ()


_HEAT = Sign(
    code="heat",
    short="Heat, noise, scorching, smoke, a burning smell",
    seen="Heat, buzzing, crackling, scorching, smoke, or a burning or fishy smell",
    urgency="now",
    who=("fire", "network"),
    say="Where you are, that the intake is hot, smells or makes a noise, whether there "
    "is smoke, and that nobody has touched it.",
    meanwhile="Keep away and warn everyone. Only if it is cool and clear: switch off "
    "large appliances, then the main switch. With smoke or fire, get everyone out "
    "first.",
    leave="Do not touch, open, spray or reset anything.",
    conditions=("hot",),
)
_OPEN = Sign(
    code="open",
    short="Bare, broken or open parts",
    seen="Bare metal or wire, a cracked or open cut-out, a missing cover, a damaged "
    "cable",
    urgency="now",
    who=("network", "fire"),
    say="What is open or broken, and that live parts may be within reach.",
    meanwhile="Keep away, keep children and animals out, and warn everyone. It counts "
    "as live.",
    leave="Do not tape it up, push it back or cover it.",
    conditions=("damaged",),
)
_WATER = Sign(
    code="water",
    short="Water",
    seen="Water on or in the intake",
    urgency="now",
    who=("network", "fire"),
    say="Where the water comes from, and whether it still runs.",
    meanwhile="Keep away and out of the water. Stop the water elsewhere if you can "
    "reach its tap dry.",
    leave="Do not dry it, and do not switch anything there.",
    conditions=("wet",),
)
_STRUCK = Sign(
    code="struck",
    short="A street cable hit or down",
    seen="The street cable, or a cable in the ground or overhead, is hit or down",
    urgency="now",
    who=("fire", "network"),
    say="Where it is, and that it is an electricity cable. 999 when someone is hurt or "
    "anything burns.",
    meanwhile="Keep everyone well away; it may come on again by itself.",
    leave="Do not touch the cable, the tool or what they touch.",
    basis=_MEMORY,
)
_PITCH = Sign(
    code="pitch",
    short="Leaking pitch",
    seen="Black pitch or oil leaking from the cut-out",
    urgency="today",
    who=("network",),
    say="That the cut-out leaks, how much, and whether it is warm nearby or smells.",
    meanwhile="Keep clear of it. If there is heat or smell as well, it is the first "
    "sign of this page.",
    leave="Do not scrape it off or push it back.",
    conditions=("leaking",),
)
_SEAL = Sign(
    code="seal",
    short="A missing seal",
    seen="A seal is missing or broken",
    urgency="report",
    who=("supplier", "network"),
    say="Which seal, and when you first saw it. The meter's: the supplier. The "
    "cut-out's: the network. Nobody is accused of anything.",
    meanwhile="Write down the day on which you saw it.",
    leave="Do not seal it again yourself, and open nothing.",
    seals=("no",),
)
_LOOSE = Sign(
    code="loose",
    short="Loose parts",
    seen="The meter or another part hangs loose",
    urgency="report",
    who=("supplier", "network"),
    say="What is loose, and whether its cables carry it.",
    meanwhile="Keep things from knocking against it.",
    leave="Do not fix it to the wall yourself.",
    conditions=("loose",),
)
_TAILS = Sign(
    code="tails",
    short="Old or hanging tails",
    seen="Tails that hang, are thin, or are covered in rubber or cloth",
    urgency="plan",
    who=("electrician", "network"),
    say="Which side of the meter they are on. After it: the electrician. Before it: "
    "the network.",
    meanwhile="Leave them as they hang; old covering cracks when it is moved.",
    leave="Do not clip or tidy them.",
    conditions=("old_cloth",),
)
_ASBESTOS = Sign(
    code="asbestos",
    short="Possible asbestos",
    seen="Old boards, flash guards or backing that may hold asbestos",
    urgency="plan",
    who=("electrician", "landlord"),
    say="That it may hold asbestos, to everyone who comes to work there, before they "
    "drill.",
    meanwhile="Leave it undisturbed.",
    leave="Do not drill, saw, clean or vacuum it.",
    conditions=("asbestos",),
)
_LOOPED = Sign(
    code="looped",
    short="A looped supply",
    seen="A fuse in the neutral, or a supply that goes on to next door",
    urgency="report",
    who=("network",),
    say="What you see at the cut-out, and any load that you mean to add.",
    meanwhile="Add no large load until the network has answered.",
    leave="Do not open it to make sure.",
    basis=_MEMORY,
)
_TINGLE = Sign(
    code="tingle",
    short="A tingle or a shock from metal; lights very bright or very dim",
    seen="A tingle or a shock from a tap, a pipe or the case of something; lights that "
    "turn very bright or very dim together",
    urgency="now",
    who=("fire", "network"),
    say="That metal gives a shock, or that lights go bright or dim: the neutral or the "
    "earth of the supply may be broken. 999 when someone is hurt.",
    meanwhile="Keep off all metal and out of the bath, and warn everyone. If you can "
    "reach the main switch without touching metal, switch it off.",
    leave="Do not touch pipes, taps, metal cases or the meter cupboard again.",
    basis=_MEMORY,
)
SIGNS: tuple[Sign, ...] = (
    _HEAT,
    _OPEN,
    _WATER,
    _STRUCK,
    _TINGLE,
    _PITCH,
    _SEAL,
    _LOOSE,
    _LOOPED,
    _TAILS,
    _ASBESTOS,
)


def signs_recorded(record: Record) -> tuple[tuple[IntakeItem, Sign], ...]:
    """Return the items of the intake of which a warning sign is recorded."""
    found = [(item, sign) for item in record.intake for sign in _on(item)]
    return tuple(sorted(found, key=lambda pair: SIGNS.index(pair[1])))


def _on(item: IntakeItem) -> Iterator[Sign]:
    for sign in SIGNS:
        unsealed = item.seal in sign.seals and item.owner != "consumer"
        seen = item.condition in sign.conditions and _can_be_live(item, sign)
        if seen or unsealed:
            yield sign


def _can_be_live(item: IntakeItem, sign: Sign) -> bool:
    """A broken earth rod or clamp lays nothing live open."""
    return sign is not _OPEN or INTAKE_KINDS[item.kind].carries_supply
