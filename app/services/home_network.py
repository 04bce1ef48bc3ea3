"""This machine's own addresses on the home network, found without sending anything."""

from __future__ import annotations

import socket
from ipaddress import IPv4Address

from app.errors import InvalidError

# Nothing is sent there: connecting a datagram socket only asks the system which of its
# addresses it would use.  The first stands for everywhere else, the others for what
# networks in homes are mostly called (RFC 1918, RFC 3927).
TOWARDS = (
    "203.0.113.1",
    "192.168.0.1",
    "192.168.1.1",
    "10.0.0.1",
    "172.16.0.1",
    "169.254.0.1",
)
ANY_PORT = 9


def own_addresses() -> tuple[str, ...]:
    """Return this machine's IPv4 addresses on private networks.

    Raises:
        InvalidError: It has none.
    """
    found = dict.fromkeys(a for a in map(_own_towards, TOWARDS) if a and is_home(a))
    if not found:
        raise InvalidError(
            "This machine has no address on a home network just now. Join the "
            "network first, or name this machine's address with --address."
        )
    return tuple(found)


def is_home(address: str) -> bool:
    """Return whether an address is one that the internet at large cannot reach."""
    try:
        known = IPv4Address(address)
    except ValueError:
        return False
    nowhere = known.is_loopback or known.is_unspecified or known.is_multicast
    return known.is_private and not known.is_reserved and not nowhere


def _own_towards(address: str) -> str | None:
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect((address, ANY_PORT))
        except OSError:
            return None
        own: str = asking.getsockname()[0]
    return own
