"""When to stop, and whom to call: by nation, for the lines differ."""

from __future__ import annotations

from app.domain.record import Home

# From memory and common practice; the number 105 from the network operators' own page.
STOP_WHEN = (
    "Any reading where none should be, between neutral and earth too.",
    "The tester fails when it is proved again.",
    "More cables than you expected, or two circuits in one box.",
    "Heat, smell, scorching, buzzing or water.",
    "Rubber, cloth or lead covered cable, aluminium, or no earth.",
    "A way that you cannot find, or a switch that does not move as it should.",
    "An RCD that will not reset.",
    "Anyone has had a tingle.",
    "A board's cover would have to come off, or anything of the intake.",
    "You are alone, tired or unwell.",
)
_AFTER_METER = "Anything after the meter: a registered electrician."
_METER = "Meter, or a switch of your own after it: the supplier on the bill."
_FIRE = "Fire, or someone hurt: 999."
_GB = "Danger at the service cable or cut-out, or no power: ring 105, day and night."
_OWN = "Danger at the service cable or cut-out: your network operator"
_NI = "Danger at the service cable or cut-out: the network's number on your bill."


def whom_to_call(home: Home) -> tuple[str, ...]:
    """Return whom to call from a home; of an unknown nation, for every nation."""
    if home.nation == "northern_ireland":
        network: tuple[str, ...] = () if home.network_phone else (_NI,)
    elif home.nation == "unknown":
        network = (
            f"England, Scotland, Wales: {_GB[0].lower()}{_GB[1:]}",
            f"Northern Ireland: {_NI[0].lower()}{_NI[1:]}",
        )
    else:
        network = (_GB,)
    own = (f"{_OWN}: {home.network_phone}.",) if home.network_phone else ()
    return (_FIRE, *network, *own, _METER, _AFTER_METER)
