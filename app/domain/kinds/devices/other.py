"""Something else: a device that you know, but that this list does not hold.

A meter, a dimmer, a relay or an indicator light may stand on a board too. Write its
name and all that is printed on it in the note. It is taken as protecting against
nothing and opening nothing, until its poles are written down.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="other",
    label="Something else",
    order=160,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<circle cx="7" cy="12" r="1.3" fill="currentColor" stroke="none"/>'
        '<circle cx="12" cy="12" r="1.3" fill="currentColor" stroke="none"/>'
        '<circle cx="17" cy="12" r="1.3" fill="currentColor" stroke="none"/>'
    ),
    short="OTHER",
    fields=("rated_current_a", "poles"),
    outgoing=True,
)
