"""What a fault does to a protective conductor, and where only an RCD cuts it off.

Sources: BS 7671:2018+A2:2022, 543.1.3 and 411.5.3.
"""

from __future__ import annotations

from decimal import Decimal

from app.domain.circuits._working import Figure, Working, plain, result

ADIABATIC = "BS 7671:2018+A2:2022, 543.1.3"
TOUCH_V = Decimal(50)
# Table 41.5, note; from memory.
UNSTABLE_OHM = Decimal(200)


def smallest_size(current: Figure, seconds: Figure, k: Figure) -> Working:
    """Return the smallest conductor that a fault does not overheat."""
    return result(
        "Smallest protective conductor",
        (current.value**2 * seconds.value).sqrt() / k.value,
        "mm²",
        formula="S = √(I² × t) / k",
        put_in=f"√({current.shown}² × {seconds.shown}) / {plain(k.value)}",
        figures=(current, seconds, k),
        source=ADIABATIC,
    )


def fault_current(volts: Figure, impedance: Figure) -> Working:
    """Return the current of a fault through a loop."""
    return result(
        "Fault current",
        volts.value / impedance.value,
        "A",
        formula="I = U / Zs",
        put_in=f"{volts.shown} / {impedance.shown}",
        figures=(volts, impedance),
        source="BS 7671:2018+A2:2022, 411.4",
        places=0,
    )


def rcd_limit(residual_ma: Figure) -> Working:
    """Return the largest earth resistance, or Zs, with which an RCD cuts off."""
    return result(
        "Largest earth resistance with the RCD",
        TOUCH_V * 1000 / residual_ma.value,
        "Ω",
        formula="RA = 50 V / IΔn",
        put_in=f"50 V × 1000 / {residual_ma.shown}",
        figures=(residual_ma,),
        source="BS 7671:2018+A2:2022, 411.5.3, Table 41.5",
        places=0,
    )
