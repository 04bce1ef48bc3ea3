"""Ways and Points: the record of a home's electrical installation."""

from __future__ import annotations

__version__ = "0.1.0"
