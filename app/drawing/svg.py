"""SVG elements as strings: the one place where text and attributes are escaped."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from xml.sax.saxutils import escape, quoteattr

Value = str | float | None

# What XML 1.0 cannot hold, even escaped.
_NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def element(
    tag: str, attributes: Mapping[str, Value] | None = None, *children: str
) -> str:
    """Return an element; attributes that are None are left out.

    Args:
        tag: Name of the element.
        attributes: Attributes, not yet escaped.
        children: Markup that is already escaped, from `element` or `words`.
    """
    opening = "".join(
        _attribute(name, value)
        for name, value in (attributes or {}).items()
        if value is not None
    )
    inner = "".join(children)
    return f"<{tag}{opening}>{inner}</{tag}>" if inner else f"<{tag}{opening}/>"


@lru_cache(maxsize=16_384)
def _attribute(name: str, value: str | float) -> str:
    """Return an attribute as markup; a drawing has few different ones."""
    if isinstance(value, str):
        return f" {name}={quoteattr(_plain(value))}"
    return f' {name}="{number(value)}"'


def words(text: str) -> str:
    """Return text as markup."""
    return escape(_plain(text))


def number(value: float) -> str:
    """Write a length in one way only, to a hundredth."""
    return f"{round(value, 2):g}" if abs(value) < 1e5 else f"{value:.0f}"


def _plain(value: str) -> str:
    return _NOT_XML.sub("\ufffd", value.replace("\xa0", " "))
