"""What files that are carried away are made with: the templates, and the look."""

from __future__ import annotations

import base64
import hashlib
from functools import cache

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from app.paths import resource_dir


@cache
def style(*names: str) -> str:
    """Return style sheets of ``static/css``, one behind the other."""
    css = resource_dir("static") / "css"
    return "".join((css / f"{name}.css").read_text("utf-8") for name in names)


@cache
def script(name: str) -> str:
    """Return a script of ``static/js``."""
    return (resource_dir("static") / "js" / f"{name}.js").read_text("utf-8")


@cache
def templates() -> Environment:
    """Return the templates, for a file that no browser asked for."""
    return Environment(
        loader=FileSystemLoader(resource_dir("templates")),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def hash_for_policy(text: str) -> str:
    """Return what a content security policy calls a style or a script by (CSP 3)."""
    return base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
