"""Where the program's own folders are: in the installed package, or the checkout."""

from __future__ import annotations

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent


def resource_dir(name: str) -> Path:
    """Return a folder such as ``templates``.

    Raises:
        FileNotFoundError: It is in neither place: the installation is broken.
    """
    for place in (PACKAGE / name, PACKAGE.parent / name):
        if place.is_dir():
            return place
    raise FileNotFoundError(f"the folder {name} of this program is missing")
