"""AFDD: opens its circuit when it senses arcing, as at a broken wire.

It is a newer device, marked AFDD, with a test button and often a light that tells why
it tripped. Most hold a circuit-breaker as well, and many an RCD: a figure in mA says
so. It does not sense every loose connection. Write down all that is printed; which
poles it breaks differs, so leave that not known unless it is drawn on its face.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="afdd",
    label="AFDD",
    order=50,
    symbol=(
        '<path d="M10 2v6M10 22v-6L5 8.5M8 6l4 4M12 6l-4 4"/>'
        '<path d="M18.5 8l-3 4.5h4l-3 4.5"/>'
    ),
    short="AFDD",
    fields=(
        "rated_current_a",
        "curve",
        "residual_current_ma",
        "rcd_type",
        "button_pressed_on",
        "button_every_months",
        "poles",
        "breaking_capacity_ka",
    ),
    # Not every one holds an RCD: leakage counts only where an IΔn is recorded.
    protects=("overload", "short_circuit"),
    # Both sorts are sold; where nothing is recorded, no more than the line is claimed.
    opens="line",
    outgoing=True,
)
