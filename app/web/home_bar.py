"""What was just done to a whole home, and the way to take it back."""

from __future__ import annotations

from dataclasses import dataclass

from flask import request, url_for
from sqlalchemy import Connection

from app.store.homes import all_homes, deleted_homes


@dataclass(frozen=True, slots=True, kw_only=True)
class HomeBar:
    """What was just done to a home.

    Attributes:
        sentence: What was done.
        button: Words of the button that takes it back.
        url: Address that it is sent to.
        fields: What is sent with it.
    """

    sentence: str
    button: str
    url: str
    fields: dict[str, str]


def home_bar(connection: Connection) -> HomeBar | None:
    """Return what the address says was done to a home, as far as it still stands."""
    return _deleted(connection) or _moved(connection)


def _deleted(connection: Connection) -> HomeBar | None:
    away = request.args.get("away", "")
    name = next((h.name for h in deleted_homes(connection) if h.ref == away), None)
    if name is None:
        return None
    return HomeBar(
        sentence=f"The home “{name}” was deleted.",
        button="Bring it back",
        url=url_for("homes.restore"),
        fields={"token": away},
    )


def _moved(connection: Connection) -> HomeBar | None:
    for said, aside in (("aside", True), ("taken_up", False)):
        ref = request.args.get(said, "")
        homes = all_homes(connection, archived=aside)
        name = next((home.name for home in homes if home.ref == ref), None)
        if name is not None:
            what = "put aside" if aside else "taken up again"
            return HomeBar(
                sentence=f"The home “{name}” was {what}.",
                button="Take it up again" if aside else "Put it aside",
                url=url_for("portfolio.aside", home=ref),
                fields={"way": "back" if aside else "aside"},
            )
    return None
