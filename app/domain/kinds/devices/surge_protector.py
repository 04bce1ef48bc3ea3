"""Surge protective device (SPD): leads sharp peaks of voltage to earth.

It has a small window or light in place of a lever; its own marks say which colour means
that it has worn out. It feeds nothing, and does nothing against overload or shock.
Write down the type printed, the colour in the window and the day that you looked.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="surge_protector",
    label="Surge protective device",
    order=130,
    symbol=(
        '<rect x="8" y="4" width="8" height="11"/>'
        '<path d="M12 1.5V8M12 15v2.5M6.5 17.5h11M8.8 20h6.4M11 22.3h2"/>'
        '<path d="M9.5 7.5h5L12 12z" fill="currentColor" stroke="none"/>'
    ),
    short="SPD",
    modules=2,
)
