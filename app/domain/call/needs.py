"""Whom to call for what is wanted, where nothing is wrong at the moment.

Basis: the network operators' own pages for what 105 is for; the rest from memory and
common practice.
"""

from __future__ import annotations

from dataclasses import dataclass

from app.domain.call.signs import Who

_PUBLISHED = "The network operators' own pages"
_MEMORY = "From memory"
_PRACTICE = "Common practice, no source"


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """Something that is wanted.

    Attributes:
        code: Its name.
        wanted: What is wanted, or is the matter.
        who: Whom to call, in this order.
        say: What to say.
        meanwhile: What to do until then; may be empty.
        basis: Where this stands, and how well that is known.
    """

    code: str
    wanted: str
    who: tuple[Who, ...]
    say: str
    meanwhile: str
    basis: str


NEEDS: tuple[Need, ...] = (
    Need(
        code="power_cut",
        wanted="No power, and next door has none either",
        who=("network",),
        say="Your postcode, since when, and whether anyone depends on it for health.",
        meanwhile="Switch off what must not start by itself, such as the cooker.",
        basis=_PUBLISHED,
    ),
    Need(
        code="tripped",
        wanted="No power, and next door has it",
        who=("electrician", "network"),
        say="What is off on the board, and what you did just before. With everything "
        "on the board on: the network.",
        meanwhile="Do not hold a switch up that falls again.",
        basis=_PRACTICE,
    ),
    Need(
        code="meter",
        wanted="Meter, communications hub, wrong off-peak hours, prepayment",
        who=("supplier",),
        say="The number on the meter, and what its display shows.",
        meanwhile="",
        basis=_MEMORY,
    ),
    Need(
        code="isolator",
        wanted="An isolator after the meter, or the meter moved",
        who=("supplier", "network"),
        say="That you want the supply to the board taken off, or an isolator fitted. "
        "The cut-out is moved by the network.",
        meanwhile="",
        basis=_MEMORY,
    ),
    Need(
        code="capacity",
        wanted="A bigger supply fuse, more load, a vehicle charge point, a heat pump, "
        "panels or a battery",
        who=("network", "electrician"),
        say="The load that is there, the load that comes, and what is printed on the "
        "cut-out.",
        meanwhile="Add it only when the network has answered, if the supply is looped "
        "or its fuse is not known.",
        basis=_MEMORY,
    ),
    Need(
        code="earthing",
        wanted="Which earthing the supply has, its loop impedance and fault current",
        who=("network",),
        say="That you ask for the facts of the supply at your address.",
        meanwhile="Write down nothing that was only guessed.",
        basis="Electricity Safety, Quality and Continuity Regulations 2002, reg 28, "
        "from memory",
    ),
    Need(
        code="after_meter",
        wanted="Anything after the meter: tails, boards, circuits, points, earthing",
        who=("electrician", "landlord"),
        say="What the record says, and what is not known; the document of this home "
        "holds both.",
        meanwhile="",
        basis=_PRACTICE,
    ),
)
