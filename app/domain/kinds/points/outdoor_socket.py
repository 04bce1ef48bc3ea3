"""Outdoor socket-outlet: a socket with a lid, made for the weather.

It is on an outside wall, in a garden or in an open shed. Write down the IP code printed
on it, and its own RCD if it has a test button. It may be fed through a switch or a
fused connection unit indoors: find that and write it down. A cracked lid or water
inside: do not touch it, and ask an electrician.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="outdoor_socket",
    label="Outdoor socket-outlet",
    order=40,
    symbol=(
        '<path d="M4 20a8 8 0 0 1 16 0M12 12V4M7 12h10"/>'
        '<path d="M12 14.2c1.8 2.2 2.2 2.9 2.2 3.7a2.2 2.2 0 0 1-4.4 0c0-.8.4-1.5 '
        '2.2-3.7z" fill="currentColor" stroke="none"/>'
    ),
    group="sockets",
)
