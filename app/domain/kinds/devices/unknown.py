"""Not known: a device that no one has made out yet.

Choose this rather than guess: it stays on the list of things to find out. Write down
what is printed on it, with a photograph of its face. It counts as live, and as
protecting against nothing.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="unknown",
    label="Not known",
    order=170,
    symbol=(
        '<rect x="3" y="3" width="18" height="18" stroke-dasharray="3 2"/>'
        '<text x="12" y="16.5" font-size="13" fill="currentColor" stroke="none" '
        'text-anchor="middle">?</text>'
    ),
    short="?",
    fields=("rated_current_a", "poles"),
    outgoing=True,
)
