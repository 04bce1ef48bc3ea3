"""What cannot wait: the warning signs, and who is called at once."""

from __future__ import annotations

from dataclasses import dataclass

from app.domain.call import SIGNS, Contact, contacts
from app.domain.record import Home


@dataclass(frozen=True, slots=True, kw_only=True)
class Danger:
    """The signs that cannot wait, with whom to call.

    Attributes:
        signs: What is seen, with the anchor of its part of the page.
        calls: Whom to call.
    """

    signs: tuple[tuple[str, str], ...]
    calls: tuple[Contact, ...]


def danger_of(home: Home) -> Danger:
    """Return what cannot wait, and whom to call from a home."""
    people = contacts(home)
    return Danger(
        signs=tuple((s.short, s.code) for s in SIGNS if s.urgency == "now"),
        calls=(*people["fire"], *people["network"]),
    )
