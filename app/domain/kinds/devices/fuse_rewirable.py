"""Rewirable fuse (BS 3036): a pull-out carrier with a bare wire that melts.

The carrier is porcelain or plastic, often with a colour: white 5 A, blue 15 A, yellow
20 A, red 30 A, green 45 A. It guards against overload and short circuit, but lets a
moderate overload run on for longer than a circuit-breaker. Write down the figure on the
carrier and, if it can be seen without touching, on the card or the wire. Leave the
carrier in its place: it is touched only with the main switch off, and an old one may
hold asbestos.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

# Colours of the carriers: common practice, no source.
KIND = DeviceKind(
    code="fuse_rewirable",
    label="Rewirable fuse (BS 3036)",
    order=60,
    symbol=(
        '<path d="M12 2v3M12 19v3M12 8c6 3-6 5 0 8"/>'
        '<circle cx="12" cy="6.5" r="1.5"/>'
        '<circle cx="12" cy="17.5" r="1.5"/>'
        '<path d="M8 4H5.5v16H8M16 4h2.5v16H16"/>'
    ),
    short="FUSE",
    fields=("rated_current_a", "fuse_wire_a", "poles", "breaking_capacity_ka"),
    protects=("overload", "short_circuit"),
    opens="line",
    outgoing=True,
)
