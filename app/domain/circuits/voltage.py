"""How much voltage a cable loses on the way.

Source: BS 7671:2018+A2:2022, 525 and Appendix 4, section 6.
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from app.domain.circuits._working import Figure, Working, result, tabled, worked
from app.domain.tables import TABLES

SOURCE = "BS 7671:2018+A2:2022, Appendix 4, section 6"


def drop_at_end(mv: Figure, current: Figure, length: Figure) -> Working:
    """Return the drop with all of a load at the far end."""
    return result(
        "Voltage drop, all at the far end",
        mv.value * current.value * length.value / 1000,
        "V",
        formula="mV × I × length / 1000",
        put_in=f"{mv.shown} × {current.shown} × {length.shown} / 1000",
        figures=(mv, current, length),
        source=SOURCE,
    )


def drop_spread(mv: Figure, current: Figure, length: Figure) -> Working:
    """Return the drop at the far end with a load spread evenly along a radial."""
    return result(
        "Voltage drop, spread evenly",
        mv.value * current.value * length.value / 2000,
        "V",
        formula="mV × I × length / 2 / 1000",
        put_in=f"{mv.shown} × {current.shown} × {length.shown} / 2 / 1000",
        figures=(mv, current, length),
        source=f"{SOURCE}; on average the current goes half way",
    )


def from_origin(drops: Sequence[Working]) -> Working:
    """Return the drop from the origin: every circuit on the way, one after another."""
    figures = tuple(worked(drop) for drop in drops)
    return result(
        "Voltage drop from the origin",
        sum((figure.value for figure in figures), Decimal(0)),
        "V",
        formula="The drops of the circuits on the way, added",
        put_in=" + ".join(figure.shown for figure in figures),
        figures=figures,
        source="BS 7671:2018+A2:2022, 525.202",
    )


def drop_limit(*, lighting: bool) -> Working:
    """Return the largest drop from the origin for what a circuit is used for."""
    use = "lighting" if lighting else "other uses"
    share = tabled(f"Share, {use}", TABLES["voltage-limits"].at(use, "Share"))
    volts = tabled(
        "Declared voltage",
        TABLES["supply"].at("declared voltage (V)", "Figure"),
        unit="V",
    )
    return result(
        "Largest voltage drop",
        share.value * volts.value / 100,
        "V",
        formula="Share × voltage",
        put_in=f"{share.shown} × {volts.shown}",
        figures=(share, volts),
        source="BS 7671:2018+A2:2022, 525.202",
    )
