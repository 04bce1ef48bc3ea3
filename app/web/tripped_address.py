"""A walk in an address: the answers given, and what of the record was named.

Nothing of it is kept elsewhere, so the browser's own way back works, and a page that is
opened again is where it was.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from urllib.parse import urlencode

from flask import url_for
from werkzeug.datastructures import MultiDict

from app.domain.tripped import Chosen, Screen, asked, trail

# What an address holds where a thing was asked for and nobody knew.
NOBODY_KNOWS = "?"
MOST = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Walk:
    """What an address says.

    Attributes:
        codes: The screens chosen, one after the other.
        named: What was named, by ``device``, ``way`` or ``point``.
    """

    codes: tuple[str, ...]
    named: tuple[tuple[str, str], ...]

    @property
    def screens(self) -> tuple[Screen, ...]:
        """The screens walked through; none if the answers do not follow."""
        return trail(self.codes) or ()

    @property
    def chosen(self) -> Chosen:
        """What of the record was named."""
        known = {name: ref for name, ref in self.named if ref != NOBODY_KNOWS}
        return Chosen(**known)

    @property
    def open(self) -> str:
        """What has to be named next before the screen is shown; empty for nothing."""
        given = {name for name, _ in self.named}
        return next((name for name in asked(self.screens) if name not in given), "")

    @property
    def pairs(self) -> tuple[tuple[str, str], ...]:
        """Names and values that say all of it in an address or a form."""
        return (*(("to", code) for code in self.codes), *self.named)

    def naming(self, name: str, ref: str) -> Walk:
        """Return the walk with something named."""
        others = tuple(pair for pair in self.named if pair[0] != name)
        return replace(self, named=(*others, (name, ref)))

    def going(self, code: str) -> Walk:
        """Return the walk one screen further."""
        return replace(self, codes=(*self.codes, code))

    def back(self) -> Walk:
        """Return the walk one step less: what was named last, else the last answer."""
        before = replace(self, codes=self.codes[:-1])
        last = {*asked(self.screens)} - {*asked(before.screens)}
        kept = tuple(pair for pair in self.named if pair[0] not in last)
        return replace(self, named=kept) if kept != self.named else before

    def url(self, home: str) -> str:
        """Return its address."""
        query = f"?{urlencode(self.pairs)}" if self.pairs else ""
        return f"{url_for('tripped.show', home=home)}{query}"


def read(args: MultiDict[str, str]) -> Walk:
    """Return what names and values say."""
    named = tuple(
        (name, args[name]) for name in ("device", "way", "point") if args.get(name)
    )
    return Walk(codes=tuple(args.getlist("to")[:MOST]), named=named)
