"""One module a page, found by itself: each holds a blueprint called ``bp``."""

from __future__ import annotations

import importlib
import pkgutil

from flask import Flask


def init_app(app: Flask) -> None:
    """Register every page."""
    for info in pkgutil.iter_modules(__path__):
        app.register_blueprint(importlib.import_module(f"{__name__}.{info.name}").bp)
