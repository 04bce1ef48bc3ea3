"""Cartridge fuse (BS 1361): a pull-out carrier with a closed fuse in it.

From outside it looks like a rewirable fuse and follows the same colours; the board or
the carrier may say BS 1361. It guards against overload and short circuit, and opens
faster than a wire. Write down the figure on the carrier; leave the kind not known if
nothing says which it is. Leave the carrier in its place: it is touched only with the
main switch off.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="fuse_cartridge",
    label="Cartridge fuse (BS 1361)",
    order=70,
    symbol=('<rect x="8" y="5" width="8" height="14"/><path d="M12 2v20"/>'),
    short="FUSE",
    fields=("rated_current_a", "poles", "breaking_capacity_ka"),
    protects=("overload", "short_circuit"),
    opens="line",
    outgoing=True,
)
