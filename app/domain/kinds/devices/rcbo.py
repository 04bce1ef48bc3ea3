"""RCBO: a circuit-breaker and an RCD in one, for one circuit.

It looks like a circuit-breaker, often a taller one, with a test button and a figure in
mA as well as a mark such as B32. It opens on overload, short circuit and leakage to
earth. Some break the line only, some line and neutral: leave that not known unless a
drawing on its face shows it. Write down the letter, the A, the mA and the type letters.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="rcbo",
    label="RCBO",
    order=40,
    symbol=(
        '<path d="M14 2v6M14 22v-6L9 8.5M12 6l4 4M16 6l-4 4"/>'
        '<path d="M9 18.5a5 1.9 0 1 0 10 0a5 1.9 0 1 0-10 0"/>'
        '<path d="M9 18.5H4.5v-6h7" stroke-dasharray="2 1.3"/>'
    ),
    short="RCBO",
    fields=(
        "rated_current_a",
        "curve",
        "residual_current_ma",
        "rcd_type",
        "time_delayed",
        "button_pressed_on",
        "button_every_months",
        "poles",
        "breaking_capacity_ka",
    ),
    protects=("overload", "short_circuit", "earth_leakage"),
    # Both sorts are sold; where nothing is recorded, no more than the line is claimed.
    opens="line",
    outgoing=True,
)
