"""Kinds of device, intake item and point: one module each, found by itself."""

from __future__ import annotations

from app.domain.kinds import devices, intake, points
from app.domain.kinds._kind import (
    DeviceKind,
    IntakeKind,
    Kind,
    PointKind,
    found_in,
    help_texts,
)

DEVICE_KINDS = found_in(devices, DeviceKind)
INTAKE_KINDS = found_in(intake, IntakeKind)
POINT_KINDS = found_in(points, PointKind)
KIND_HELP = {
    "device": help_texts(devices),
    "intake": help_texts(intake),
    "point": help_texts(points),
}

__all__ = [
    "DEVICE_KINDS",
    "INTAKE_KINDS",
    "KIND_HELP",
    "POINT_KINDS",
    "DeviceKind",
    "IntakeKind",
    "Kind",
    "PointKind",
]
