"""The command ``ways``: thin commands that parse, call a service, and print.

One module a command, found by itself; each puts its command on :data:`main` of
``app.cli._base``.  Modules are imported in the order in which ``--help`` lists them.
"""

from __future__ import annotations

import importlib
import pkgutil

from app.cli._base import main

FIRST = ("serve", "record", "ask", "trace", "faults")
LAST = ("demo", "db")


def _in_order() -> list[str]:
    names = {module.name for module in pkgutil.iter_modules(__path__)}
    rest = sorted(n for n in names - {*FIRST, *LAST} if not n.startswith("_"))
    return [*FIRST, *rest, *LAST]


for _name in _in_order():
    importlib.import_module(f"{__name__}.{_name}")

__all__ = ["main"]
