"""Tails: the single cables that join the things of the intake and the board.

They come in pairs, line and neutral, each with a sheath of its own. Those before the
meter belong to the network or the meter operator, those after it are yours; record each
length as its own item. Your tails are guarded only by the network's fuse, and those
before the first switch cannot be switched off by you. Write down the size only if it is
printed, the length, and any heat, sagging or old cloth covering; do not move them.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="tails",
    label="Tails",
    order=30,
    symbol=(
        '<path d="M6.5 2c0 9 6 11 6 20M12.5 2c0 9 6 11 6 20"/>'
        '<path d="M4.5 5.5h5M10.5 5.5h5"/>'
    ),
    # Those before the meter and those after it are one kind with different owners.
    usual_owner="unknown",
    who_opens=(
        "Before the meter only the meter operator or the network; after it an "
        "electrician, with the supply off upstream."
    ),
    fields=("csa_mm2", "length_m"),
)
