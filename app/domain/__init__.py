"""The record and what is computed from it: no I/O, no clock, no web."""

from __future__ import annotations
