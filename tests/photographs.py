"""Pictures and papers, made by the tests: small, and some of them wicked."""

from __future__ import annotations

import struct
import zlib
from io import BytesIO
from typing import Any

from PIL import Image
from PIL.PngImagePlugin import PngInfo

# What a camera writes and nobody is to see.
WHERE = (51.0, 30.0, 26.4)
MAKER, COMMENT, SOFTWARE = b"Invented Camera", b"Spare key under the pot", b"Tool 9"
PDF = b"%PDF-1.4\n1 0 obj<</Type/Catalog>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n"
SVG = b'<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"><script/></svg>'


def picture(
    width: int = 60, height: int = 40, *, form: str = "JPEG", seed: int = 0, **more: Any
) -> bytes:
    """A picture whose left half is red, its right blue; a seed makes it another."""
    image = Image.new("RGB", (width, height), (20, 20, 200))
    image.paste((200, 20, 20), (0, 0, width // 2, height))
    if seed:
        image.paste((10 * seed, 200, 20), (0, 0, 8, 8))
    file = BytesIO()
    image.save(file, form, **more)
    return file.getvalue()


def with_all_a_camera_writes(*, orientation: int = 1, form: str = "JPEG") -> bytes:
    """A picture with its place, its maker, its time, a small picture, a comment."""
    exif = Image.Exif()
    exif[0x0112] = orientation
    exif[0x010F] = MAKER.decode()
    exif[0x0131] = SOFTWARE.decode()
    exif[0x8769] = {0x9003: "2026:03:01 14:05:00", 0x9286: COMMENT}
    exif[0x8825] = {1: "N", 2: WHERE, 3: "W", 4: WHERE}
    more: dict[str, Any] = {"exif": exif}
    if form == "JPEG":
        more["comment"] = COMMENT
    if form == "PNG":
        texts = PngInfo()
        texts.add_text("Comment", COMMENT.decode())
        more["pnginfo"] = texts
    return picture(form=form, **more)


def bomb(width: int, height: int) -> bytes:
    """A small PNG that says how large it would be."""
    head = struct.pack(">IIBBBBB", width, height, 1, 0, 0, 0, 0)
    body = zlib.compress(b"\0" * 1000)
    parts = ((b"IHDR", head), (b"IDAT", body), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(_chunk(*part) for part in parts)


def _chunk(name: bytes, data: bytes) -> bytes:
    check = struct.pack(">I", zlib.crc32(name + data))
    return struct.pack(">I", len(data)) + name + data + check
