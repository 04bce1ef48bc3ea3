"""Whom to call: by what is seen at the intake, by what is wanted, by whose it is.

``signs`` holds the warning signs, ``needs`` everything else, ``contacts`` who is
reached how in each nation.  A number that differs by place is never shipped: the person
writes their own into the home.
"""

from __future__ import annotations

from app.domain.call.contacts import Contact, contacts, network_of
from app.domain.call.items import Whose, whose_of
from app.domain.call.needs import NEEDS, Need
from app.domain.call.signs import SIGNS, URGENCIES, Sign, signs_recorded

__all__ = [
    "NEEDS",
    "SIGNS",
    "URGENCIES",
    "Contact",
    "Need",
    "Sign",
    "Whose",
    "contacts",
    "network_of",
    "signs_recorded",
    "whose_of",
]
