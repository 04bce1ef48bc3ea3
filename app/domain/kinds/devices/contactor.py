"""Contactor: a switch worked by a coil, on the orders of a clock or a control.

It is a block of one to three modules without a lever, or with a small one marked A, and
it may hum or click. It protects against nothing and is no isolator: what it feeds may
come on by itself at any hour. Write down its rating, what works it, and when.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="contactor",
    label="Contactor",
    order=110,
    symbol=(
        '<path d="M17 2v6M17 22v-6L12 8.5M17 4.4a1.8 1.8 0 0 1 0 3.6"/>'
        '<rect x="2.5" y="9" width="5.5" height="6.5"/>'
        '<path d="M8 12.3h6.3" stroke-dasharray="2 1.3"/>'
    ),
    short="CONT",
    fields=("rated_current_a", "poles"),
    opens="line_and_neutral",
    switches_itself=True,
    outgoing=True,
    modules=2,
)
