"""Fused connection unit: joins one appliance or spur through a fuse of its own.

It is a plate with a small fuse drawer, often with a switch, a light or a flex outlet.
Some have a switch, most often for both poles, and some have none; the record does not
say which, so it is never listed as able to switch anything. Write down the fuse marked
on it, and each thing that goes off with it; if nothing does, its use is not known,
never spare. Its supply side stays live, and it is no isolation by itself.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="fused_connection_unit",
    label="Fused connection unit",
    order=50,
    symbol=(
        '<rect x="2.5" y="5" width="19" height="14"/>'
        '<rect x="8" y="9.5" width="8" height="5"/>'
        '<path d="M2.5 12h19"/>'
    ),
    group="sockets",
    has_fuse=True,
    # Sold with a switch and without one, and no field says which: nothing is claimed.
    switches="none",
    guards_onward=True,
    draws=False,
)
