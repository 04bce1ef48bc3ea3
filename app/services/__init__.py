"""Use cases: a connection first, domain values back; what they change, they log."""

from __future__ import annotations
