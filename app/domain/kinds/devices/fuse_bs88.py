"""Cartridge fuse (BS 88-3): the household cartridge fuse that followed BS 1361.

It sits in a pull-out carrier or behind a hinged holder; the number BS 88 is printed on
the fuse or its holder. It guards against overload and short circuit. Write down what
the outside says, and no more: the carrier's figure is not proof of the fuse in it.
Leave it in its place: it is touched only with the main switch off.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="fuse_bs88",
    label="Cartridge fuse (BS 88-3)",
    order=80,
    symbol=(
        '<rect x="8" y="5" width="8" height="14"/>'
        '<path d="M12 2v20"/>'
        '<rect x="8" y="5" width="8" height="3" fill="currentColor"/>'
        '<rect x="8" y="16" width="8" height="3" fill="currentColor"/>'
    ),
    short="FUSE",
    fields=("rated_current_a", "poles", "breaking_capacity_ka"),
    protects=("overload", "short_circuit"),
    opens="line",
    outgoing=True,
)
