"""A measured value as papers write it: >200, 0,35, 350 mΩ, N/A."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal

# What stands on a paper where nothing was measured.
NOTHING = frozenset({"", "-", "–", "—", "n/a", "na", "n.a.", "lim", "nil", "nv", "n/v"})
OVER = frozenset({">", "≥", "+", ">="})
UNDER = frozenset({"<", "≤", "<="})
# How many of each unit make one of the column's own.
UNITS: dict[str, dict[str, int | str]] = {
    "Ω": {"": 1, "ω": 1, "ohm": 1, "ohms": 1, "r": 1, "mω": "0.001", "mohm": "0.001",
          "kω": 1000, "k": 1000, "kohm": 1000},
    "MΩ": {"": 1, "mω": 1, "mohm": 1, "m": 1, "meg": 1, "gω": 1000, "g": 1000,
           "kω": "0.001", "k": "0.001", "kohm": "0.001"},
    "ms": {"": 1, "ms": 1, "s": 1000},
    "kA": {"": 1, "ka": 1, "k": 1, "a": "0.001"},
}  # fmt: skip
# A value of each unit as it is often written.
EXAMPLES = {"Ω": "0.35", "MΩ": ">200", "ms": "21", "kA": "1.2"}
THOUSANDS = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")
_SHAPE = re.compile(
    r"(?P<sign>>=|<=|[>≥+<≤])?\s*(?P<number>[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)\s*"
    r"(?P<unit>[a-zωµ]*)"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A value as it was read.

    Attributes:
        value: The number in the column's unit; None where nothing was measured.
        sign: ``exact``, ``over`` or ``under``.
    """

    value: Decimal | None = None
    sign: str = "exact"


def read(text: str, unit: str) -> Reading:
    """Return what stands in a cell.

    Args:
        text: As it was typed.
        unit: The column's unit: Ω, MΩ, ms or kA.

    Raises:
        ValueError: It is no value; the sentence says what to enter.
    """
    tidy = " ".join(text.split())
    # The two letters for ohm, and the capital that makes mega out of milli.
    plain = tidy.replace("\u2126", "Ω").replace("Ω", "ω")
    if plain.casefold() in NOTHING:
        return Reading()
    found = _SHAPE.fullmatch(plain.casefold() if unit != "Ω" else _small(plain))
    factor = UNITS[unit].get(found["unit"]) if found else None
    if found is None or factor is None:
        raise ValueError(
            f"Enter a number in {unit}, such as {EXAMPLES[unit]}, or leave it open."
        )
    if THOUSANDS.fullmatch(found["number"]):
        raise ValueError("That comma can be read two ways: write 1667, or 1.667.")
    sign = found["sign"] or ""
    number = Decimal(found["number"].replace(",", ".")) * Decimal(factor)
    over = "over" if sign in OVER else "under" if sign in UNDER else "exact"
    return Reading(value=number, sign=over)


def _small(text: str) -> str:
    """Return it in small letters, but for a mega, which no column of ohms takes."""
    return "".join(c if c == "M" else c.casefold() for c in text)
