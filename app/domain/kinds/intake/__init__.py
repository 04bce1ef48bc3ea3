"""One module a kind; found by itself."""

from __future__ import annotations
