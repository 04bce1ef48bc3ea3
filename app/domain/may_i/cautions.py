"""Cautions that go with a job, some of them only where it is, or may be.

Figures are those of BS 7671:2018+A2:2022; what was not read says so.  What names no
source is common practice.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from typing import Literal

Care = Literal[
    "network_first",
    "board_cover",
    "bath",
    "bath_socket",
    "bath_old_socket",
    "bath_switch",
    "socket_rcd",
    "outdoors",
    "if_outdoors",
    "earthing",
    "lighting",
    "alarms",
]
_OUTDOORS = "Outdoors it needs a 30 mA RCD and an enclosure that suits rain."
CARES: dict[Care, str] = {
    "network_first": (
        "The network operator is told, and asked first when the supply is looped, its "
        "fuse is unknown or the load may be too much for it."
    ),
    "board_cover": (
        "Have an electrician do it: with the main switch off its incoming terminals "
        "and the tails behind the cover stay live."
    ),
    "bath": (
        "In a room with a bath or shower, what is fitted has to suit its distance from "
        "the water, and every circuit of the room needs a 30 mA RCD "
        "(BS 7671:2018+A2:2022, 701.411.3.3, one source seen)."
    ),
    "bath_socket": (
        "In a room with a bath or shower, no 230 V socket may be within 2.5 m of the "
        "edge of zone 1, the space over bath or shower (3 m in earlier editions): few "
        "rooms are that large. Nearer only a shaver unit made for it may be "
        "(BS 7671:2018+A2:2022, 701.512.3; the 2.5 m from memory)."
    ),
    "bath_old_socket": (
        "A socket that is nearer is not renewed there: ask an electrician to take it "
        "away."
    ),
    "bath_switch": (
        "Within 0.6 m of a bath or shower no wall switch and no fused connection unit "
        "may be; a pull cord may (BS 7671:2018+A2:2022, 701.512.3, from memory)."
    ),
    "socket_rcd": (
        "A new socket of up to 32 A needs a 30 mA RCD before it "
        "(BS 7671:2018+A2:2022, 411.3.3): without one, have it added first."
    ),
    "outdoors": _OUTDOORS,
    "if_outdoors": _OUTDOORS,
    "earthing": (
        "Earthing outdoors and in outbuildings is a matter of design: ask an "
        "electrician before anything is bought."
    ),
    "lighting": (
        "A shared neutral can read dead until it is parted: switch off the main switch "
        "for any work on lights, not one way."
    ),
    "alarms": "Never leave a home without a working smoke alarm overnight.",
}
WET = frozenset({"bath_zone", "bathroom", "bath_void"})
BY_WATER = ("bath", "bath_socket", "bath_old_socket", "bath_switch")
OF_SOCKETS = ("bath_socket", "bath_old_socket", "socket_rcd")


def cautions_of(
    cares: Collection[Care], places: Collection[str], thing: str = ""
) -> tuple[str, ...]:
    """Return the cautions of a job that hold, in words.

    Args:
        cares: What can go with the job.
        places: The kinds of place where it may be; one, if it is known.
        thing: What is added, if it is known.
    """
    return tuple(_holding(cares, frozenset(places), thing))


def _holding(
    cares: Collection[Care], places: frozenset[str], thing: str
) -> Iterator[str]:
    for care in cares:
        dry = care in BY_WATER and not places & WET
        indoors = care == "if_outdoors" and places != {"outdoors"}
        outdoors = care == "socket_rcd" and places == {"outdoors"}
        no_socket = care in OF_SOCKETS and thing not in ("", "socket_or_spur")
        if not (dry or indoors or outdoors or no_socket):
            yield CARES[care]
