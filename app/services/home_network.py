"""This machine's own addresses on the home network, found without sending anything."""

from __future__ import annotations

import socket
from ipaddress import IPv4Address

from app.errors import InvalidError

# Nothing is sent to any of these: connecting a datagram socket only asks the system
# which of its addresses it would use.  The first stands for everywhere else; the others
# are what networks in homes are mostly called (RFC 1918), for one whose router is off.
ELSEWHERE = "203.0.113.1"
MOSTLY_CALLED = (*(f"192.168.{n}.1" for n in range(256)), "10.0.0.1", "172.16.0.1")
ANY_PORT = 9


def own_addresses() -> tuple[str, ...]:
    """Return the IPv4 addresses by which this machine is in the home network.

    That is the one by which it would reach everything else; only where there is none,
    those of private networks it is in.

    Raises:
        InvalidError: It has none.
    """
    found = _homes_towards(ELSEWHERE) or _homes_towards(*MOSTLY_CALLED)
    if not found:
        raise InvalidError(
            "This machine has no address on a home network just now. Join the "
            "network first, or name this machine's address with --address."
        )
    return found


def _homes_towards(*places: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(a for a in map(_own_towards, places) if is_home(a)))


def is_home(address: str) -> bool:
    """Return whether an address is one that the internet at large cannot reach."""
    try:
        known = IPv4Address(address)
    except ValueError:
        return False
    nowhere = known.is_loopback or known.is_unspecified or known.is_multicast
    return known.is_private and not known.is_reserved and not nowhere


def _own_towards(address: str) -> str:
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect((address, ANY_PORT))
        except OSError:
            return ""
        own: str = asking.getsockname()[0]
    return own
