"""The supply number on the bill: its check digit, and the area it belongs to.

References:
    MPAN core, 13 digits: two for the distributor, ten of its own, one to check.
    Weights: two or more independent sources (primes from 3 to 43, without 11).
    Areas: two or more independent sources; wording our own.
    Independent networks from 24 upwards: from memory.
    Northern Ireland's 11 digits beginning 81: from memory, no check known.
"""

from __future__ import annotations

WEIGHTS = (3, 5, 7, 13, 17, 19, 23, 29, 31, 37, 41, 43)
AREAS = {
    10: "Eastern England",
    11: "East Midlands",
    12: "London",
    13: "Merseyside and North Wales",
    14: "West Midlands",
    15: "North East England",
    16: "North West England",
    17: "Northern Scotland",
    18: "Central and Southern Scotland",
    19: "South East England",
    20: "Southern England",
    21: "South Wales",
    22: "South West England",
    23: "Yorkshire",
}
INDEPENDENT = range(24, 40)


def check_digit(first_twelve: str) -> int:
    """Return the thirteenth digit that belongs to the first twelve."""
    pairs = zip(first_twelve, WEIGHTS, strict=True)
    return sum(int(digit) * weight for digit, weight in pairs) % 11 % 10


def checked_mpan(value: str) -> str:
    """Return a supply number as it is, or nothing for an empty one.

    Raises:
        ValueError: It is no supply number: a sentence saying what to look at.
    """
    if not value or _northern_ireland(value):
        return value
    if not (value.isascii() and value.isdigit() and len(value) == 13):
        raise ValueError("must be the 13 digits on the bill, without spaces")
    if check_digit(value[:12]) != int(value[12]):
        raise ValueError("does not add up: look at each digit again")
    return value


def area(value: str) -> str:
    """Return the licence area of a supply number, in words."""
    if not value:
        return ""
    if _northern_ireland(value):
        return "Northern Ireland"
    distributor = int(value[:2])
    if distributor in INDEPENDENT:
        return "an independent network"
    return AREAS.get(distributor, "an area that is not known here")


def _northern_ireland(value: str) -> bool:
    return (
        value.isascii() and value.isdigit() and len(value) == 11 and value[:2] == "81"
    )
