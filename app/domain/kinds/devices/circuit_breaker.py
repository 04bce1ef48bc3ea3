"""Circuit-breaker: opens its circuit on an overload or a short circuit.

It is one module wide, with a lever and a mark such as B32; an older one may say Type 2.
It has no test button, which tells it from an RCBO or an AFDD. It guards the cable, and
together with the earthing it cuts off an earth fault; it is no additional protection
for a person who touches a live part. Most break the line only. Write down the letter or
type, the A, and the figure in a box: 6000 there means 6 kA.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="circuit_breaker",
    label="Circuit-breaker",
    order=30,
    symbol='<path d="M14 2v6M14 22v-6L9 8.5M12 6l4 4M16 6l-4 4"/>',
    short="CB",
    fields=("rated_current_a", "curve", "poles", "breaking_capacity_ka"),
    protects=("overload", "short_circuit"),
    opens="line",
    outgoing=True,
)
