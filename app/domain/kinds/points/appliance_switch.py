"""Switch for one appliance: a switch away from the thing that it feeds.

It is often above a worktop with a name such as fridge on it, or one of a row of small
switches. It normally breaks both poles and has no fuse of its own. Write down what goes
off with it, not what its name says; if nothing does, its use is not known. Its supply
side stays live, and it is no isolation by itself.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="appliance_switch",
    label="Switch for one appliance",
    order=130,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<path d="M3 10h5l6-4.5M16 10h5"/>'
        '<rect x="8" y="13.5" width="8" height="4.5"/>'
    ),
    group="fixed",
    switches="line_and_neutral",
    draws=False,
)
