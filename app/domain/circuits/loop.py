"""The path of an earth fault: conductors, loop impedance, and the limit of a device.

Sources: BS 7671:2018+A2:2022, 411 and Tables 41.2 to 41.5; BS EN 60228.
"""

from __future__ import annotations

from decimal import Decimal

from app.domain.circuits._working import (
    CannotTell,
    Figure,
    Outcome,
    Working,
    plain,
    result,
    tabled,
    told,
    worked,
)
from app.domain.circuits.ring import quarter
from app.domain.tables import TABLES, Value

LIMIT = "Largest Zs for the device"
U0 = Value(Decimal(230), "V", "BS 7671:2018+A2:2022, Appendix 2", "C")
CMIN = Value(Decimal("0.95"), "", "BS 7671:2018+A2:2022 Table 41.3", "C")
BREAKERS = frozenset({"circuit_breaker", "rcbo", "afdd"})
FUSES = {
    "fuse_rewirable": "rewirable-zs",
    "fuse_bs88": "bs88-3-zs",
    "fuse_cartridge": "bs1361-zs",
    "fuse_plug": "bs1362-zs",
}
AT_5_S = {"D": Decimal(10)}
Time = Decimal


def conductor(label: str, mm2: Decimal) -> Figure:
    """Return the resistance of copper at 20 °C.

    Raises:
        OutsideTableError: The size is not in the table.
    """
    return tabled(f"{label}, {plain(mm2)} mm²", TABLES["conductor"].at(mm2))


def end_to_end(name: str, mm2: Decimal, length: Figure) -> Working:
    """Return the resistance of one conductor from end to end, cold.

    Raises:
        OutsideTableError: The size is not in the table.
    """
    copper = conductor(name, mm2)
    return result(
        name,
        copper.value * length.value / 1000,
        "Ω",
        formula="mΩ/m × length / 1000",
        put_in=f"{copper.shown} × {length.shown} / 1000",
        figures=(copper, length),
        source="BS EN 60228",
        places=3,
    )


def r1r2(line_mm2: Decimal, cpc_mm2: Decimal, length: Figure) -> Working:
    """Return R1+R2 of a radial, cold, at its far end.

    Raises:
        OutsideTableError: A size is not in the table.
    """
    line, cpc = conductor("Line", line_mm2), conductor("Protective", cpc_mm2)
    return result(
        "R1+R2",
        (line.value + cpc.value) * length.value / 1000,
        "Ω",
        formula="R1+R2 = (line + protective) × length / 1000",
        put_in=f"({line.shown} + {cpc.shown}) × {length.shown} / 1000",
        figures=(line, cpc, length),
        source="BS EN 60228",
        places=3,
    )


def ring_r1r2(line_mm2: Decimal, cpc_mm2: Decimal, loop: Figure) -> Working:
    """Return R1+R2 of a ring, cold, from the length of its loop.

    Raises:
        OutsideTableError: A size is not in the table.
    """
    ends = [
        worked(end_to_end(name, mm2, loop))
        for name, mm2 in (("r1", line_mm2), ("r2", cpc_mm2))
    ]
    return quarter(*ends)


def warm(cold: Figure, conductors: str = "in cable, 70 °C") -> Working:
    """Return a resistance with the conductors as warm as in use."""
    factor = tabled("Factor for warmth", TABLES["warmth"].at(conductors))
    return result(
        f"{cold.label}, warm",
        cold.value * factor.value,
        "Ω",
        formula="cold × factor for warmth",
        put_in=f"{cold.shown} × {plain(factor.value)}",
        figures=(cold, factor),
        source=factor.source,
        places=3,
    )


def zs(ze: Figure, *r1r2s: Figure) -> Working:
    """Return Zs: the loop outside, and every circuit on the way to the point."""
    figures = (ze, *r1r2s)
    return result(
        "Loop impedance, Zs",
        sum((figure.value for figure in figures), Decimal(0)),
        "Ω",
        formula="Zs = Ze + (R1+R2)",
        put_in=" + ".join(figure.shown for figure in figures),
        figures=figures,
        source="BS 7671:2018+A2:2022, 411.4",
    )


@told(LIMIT)
def zs_limit(kind: str, rated: Figure, curve: str, seconds: Time) -> Outcome:
    """Return the largest Zs with which a device opens in time.

    Args:
        kind: Code of the kind of device; ``fuse_plug`` for one in a plug.
        rated: Its rating.
        curve: Its type, for a circuit-breaker.
        seconds: The time in which it has to open.
    """
    if kind in BREAKERS:
        return _breaker_limit(rated, curve, seconds)
    if kind not in FUSES:
        return CannotTell(label=LIMIT, why="the kind of device sets no limit")
    if seconds not in (Decimal("0.4"), Decimal(5)):
        why = f"the tables of fuses give no figure for {plain(seconds)} s"
        return CannotTell(label=LIMIT, why=why)
    column = f"{plain(seconds)} s"
    figure = tabled(f"Limit at {column}", TABLES[FUSES[kind]].at(rated.value, column))
    return result(
        LIMIT,
        figure.value,
        "Ω",
        formula=f"As the table gives it for {column}",
        put_in=figure.shown,
        figures=(figure, rated),
        source=figure.source,
    )


def _breaker_limit(rated: Figure, curve: str, seconds: Time) -> Outcome:
    value = TABLES["breaker-multiples"].at(curve)
    if seconds >= 5 and curve in AT_5_S:
        source = TABLES["breaker-zs"].source
        value = Value(AT_5_S[curve], "", source, "MD")
    multiple = tabled(f"Opens at once, type {curve}", value)
    volts, low = tabled("Voltage to earth", U0), tabled("Cmin", CMIN)
    return result(
        LIMIT,
        volts.value * low.value / (multiple.value * rated.value),
        "Ω",
        formula="Zs = 230 V × Cmin / (multiple × In)",
        put_in=f"230 V × 0.95 / ({plain(multiple.value)} × {rated.shown})",
        figures=(volts, low, multiple, rated),
        source=TABLES["breaker-zs"].source,
    )


def cold_limit(limit: Figure) -> Working:
    """Return what a measured Zs may reach, for it is measured cold."""
    factor = tabled("Share for a measured Zs", TABLES["measured-factor"].at("cold"))
    return result(
        "Largest measured Zs",
        limit.value * factor.value,
        "Ω",
        formula="0.8 × limit",
        put_in=f"{plain(factor.value)} × {limit.shown}",
        figures=(factor, limit),
        source=factor.source,
        places=3,
    )
