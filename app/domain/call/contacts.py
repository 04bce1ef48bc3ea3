"""Who is reached how, by nation.

105: the network operators of Great Britain publish it; it is free, whoever sends the
bill.  It does not serve Northern Ireland, where the number stands on the bill.  999
holds in all four nations.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from app.domain.call.signs import Who
from app.domain.phone import dialled
from app.domain.record import Home

GREAT_BRITAIN = ("england", "wales", "scotland")
_NETWORK = "Your network operator"
_BILL = "The number stands on the electricity bill."


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """Someone to call.

    Attributes:
        who: Which of them.
        name: What they are called.
        number: The number as it is shown; empty if none is known.
        dial: The number as it is dialled; empty if none is known.
        note: When to call them, and where the number stands.
    """

    who: Who
    name: str
    number: str
    dial: str
    note: str


def contacts(home: Home) -> Mapping[Who, tuple[Contact, ...]]:
    """Return whom a home can call, by who they are; a nation not known has both."""
    return {
        "fire": (
            _contact("fire", "Emergency services", "999", "Fire, or danger to life."),
        ),
        "network": network_of(home),
        "supplier": (
            _contact("supplier", "Your supplier", "", f"For the meter. {_BILL}"),
        ),
        "electrician": (
            _contact(
                "electrician",
                "A registered electrician",
                "",
                "For anything after the meter. The one who did the last work knows it.",
            ),
        ),
        "landlord": (
            _contact(
                "landlord",
                "Your landlord, or the building's owner",
                "",
                "For what is theirs, and before anything fixed is altered.",
            ),
        ),
    }


def network_of(home: Home) -> tuple[Contact, ...]:
    """Return how the network is reached from a home, by the person's own number too."""
    own = _own(home)
    if home.nation in GREAT_BRITAIN:
        return (_great_britain(), *own)
    if home.nation == "northern_ireland":
        return own or (_northern_ireland(),)
    return (*own, _great_britain(), _northern_ireland())


def _own(home: Home) -> tuple[Contact, ...]:
    if not home.network_phone:
        return ()
    note = "As you wrote it down."
    return (_contact("network", _NETWORK, home.network_phone, note),)


def _great_britain() -> Contact:
    return _contact(
        "network",
        _NETWORK,
        "105",
        "England, Scotland and Wales: free, day and night, whoever sends the bill.",
    )


def _northern_ireland() -> Contact:
    return _contact(
        "network",
        f"{_NETWORK}, Northern Ireland",
        "",
        f"105 does not reach it. {_BILL} Write it into the home.",
    )


def _contact(who: Who, name: str, number: str, note: str) -> Contact:
    return Contact(who=who, name=name, number=number, dial=dialled(number), note=note)
