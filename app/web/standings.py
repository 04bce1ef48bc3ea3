"""What homes need, kept between requests until they change."""

from __future__ import annotations

from flask import current_app

from app.errors import NotFoundError
from app.services.portfolio import Standing, Standings
from app.store.homes import home_id
from app.web.papers import today
from app.web.session import read


def standing_of_home(ref: str) -> Standing:
    """Return what a home needs.

    Raises:
        NotFoundError: There is no such home.
    """
    connection = read()
    key = home_id(connection, ref)
    if key is None:
        raise NotFoundError(f"There is no home “{ref}” here.")
    known: Standings = current_app.extensions.setdefault("standings", Standings())
    return known.of(connection, key, today())
