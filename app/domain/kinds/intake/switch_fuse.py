"""Switch-fuse: a switch and a fuse in one box, for long tails or one load.

It is a box with a lever on its side or front, near the meter or on the way to another
board. The switch breaks both poles as a rule; the fuse guards the cable that leaves.
Write down the rating printed on it and what it feeds, which the main switch of the
board may not cut off. With it off, its supply side stays live; its cover stays on.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="switch_fuse",
    label="Switch-fuse",
    order=100,
    symbol=(
        '<path d="M12 1v3M9.5 4h5M12 23V11.5L7 5.5"/>'
        '<circle cx="12" cy="5.3" r="1.3"/>'
        '<rect x="9" y="14" width="6" height="7"/>'
    ),
    usual_owner="consumer",
    who_opens="You may switch it; an electrician may open it.",
    fields=("rated_current_a", "poles"),
    protects=("overload", "short_circuit"),
    opens="line_and_neutral",
)
