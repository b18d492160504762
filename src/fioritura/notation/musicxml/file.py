"""From the bytes of a MusicXML file, plain or compressed, to its element tree, safely.

Nothing is fetched, no DTD is loaded, no entity is resolved, and what a compressed file unpacks to is bounded.
The container format is that of the W3C MusicXML 4.0 report, "Compressed .MXL files".
"""

from __future__ import annotations

import io
import zipfile
from pathlib import PurePosixPath
from typing import Final

from lxml import etree

from fioritura.errors import ReadError
from fioritura.files import ZIP_DAMAGE
from fioritura.words import message

__all__ = ["MAX_ELEMENTS", "parse_score", "unpacked"]

MAX_ELEMENTS: Final = 1_000_000
MAX_XML_BYTES: Final = 32 * 1024 * 1024
MAX_MEMBERS: Final = 500
MAX_RATIO: Final = 200
_SMALL_BYTES: Final = 1024 * 1024
_CONTAINER: Final = "META-INF/container.xml"
_SCORE_TYPE: Final = "application/vnd.recordare.musicxml+xml"
_SCORE_SUFFIXES: Final = frozenset({".xml", ".musicxml"})


def parse_score(data: bytes) -> etree._Element:
    """The root element, `score-partwise` or `score-timewise`.

    Raises:
        ReadError: damaged or truncated XML (with the line), XML of another kind, entities of its own, or more than
            1,000,000 elements.
    """
    root = _parsed(data)
    if root.tag in ("score-partwise", "score-timewise"):
        return root
    name = str(root.tag)[:60]
    if name in ("opus", "container", "sounds"):
        raise ReadError("xml-no-score", kind=name)
    raise ReadError("xml-not-music", element=name)


def unpacked(data: bytes) -> bytes:
    """The score inside a compressed MusicXML (.mxl) file.

    Raises:
        ReadError: a damaged or encrypted archive, one with unsafe names, or one that unpacks to too much; or no
            score in it.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            members = archive.infolist()
            _check_members(members)
            return _member(archive, _score_name(archive, members))
    except (*ZIP_DAMAGE, OSError) as error:
        raise ReadError("mxl-damaged", reason=str(error)) from None


def _parsed(data: bytes) -> etree._Element:
    if len(data) > MAX_XML_BYTES or data.count(b"<") > 2 * MAX_ELEMENTS:
        raise ReadError("xml-too-large", elements=MAX_ELEMENTS, bytes=MAX_XML_BYTES)
    parser = etree.XMLParser(
        resolve_entities=False,
        no_network=True,
        load_dtd=False,
        dtd_validation=False,
        huge_tree=False,
        remove_comments=True,
        remove_pis=True,
    )
    try:
        root = etree.fromstring(data, parser)
    except etree.XMLSyntaxError as error:
        reason = error.msg.split(", line")[0] if error.msg else message("xml-empty")
        raise ReadError("xml-damaged", line=error.lineno or 1, reason=reason) from None
    except (ValueError, LookupError) as error:
        raise ReadError("xml-unreadable", reason=str(error)) from None
    if next(root.iter(etree.Entity), None) is not None:
        raise ReadError("xml-entities")
    return root


def _check_members(members: list[zipfile.ZipInfo]) -> None:
    if len(members) > MAX_MEMBERS:
        raise ReadError("mxl-too-many-files", files=len(members), limit=MAX_MEMBERS)
    for member in members:
        path = PurePosixPath(member.filename.replace("\\", "/"))
        if path.is_absolute() or ".." in path.parts or ":" in member.filename:
            raise ReadError("mxl-unsafe-name", name=member.filename[:80])
        if member.flag_bits & 1:
            raise ReadError("mxl-password")
        if member.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
            raise ReadError("mxl-packing")
        is_dense = member.file_size > MAX_RATIO * max(1, member.compress_size)
        if member.file_size > MAX_XML_BYTES or (is_dense and member.file_size > _SMALL_BYTES):
            raise ReadError(
                "mxl-bomb",
                packed=member.compress_size,
                unpacked=member.file_size,
                limit=MAX_XML_BYTES,
                ratio=MAX_RATIO,
            )


def _score_name(archive: zipfile.ZipFile, members: list[zipfile.ZipInfo]) -> str:
    names = [member.filename for member in members]
    if _CONTAINER in names:
        container = _parsed(_member(archive, _CONTAINER))
        for rootfile in container.iter("{*}rootfile"):
            name = str(rootfile.get("full-path", ""))
            if name in names and rootfile.get("media-type", _SCORE_TYPE) == _SCORE_TYPE:
                return name
        raise ReadError("mxl-names-no-score")
    scores = [
        name for name in names if PurePosixPath(name).suffix.lower() in _SCORE_SUFFIXES and "META-INF" not in name
    ]
    if not scores:
        raise ReadError("mxl-holds-no-score")
    return scores[0]


def _member(archive: zipfile.ZipFile, name: str) -> bytes:
    """A member's content, bounded by what really comes out, whatever its header says."""
    with archive.open(name) as file:
        data = file.read(MAX_XML_BYTES + 1)
    if len(data) > MAX_XML_BYTES:
        raise ReadError("mxl-unpacks-too-far", limit=MAX_XML_BYTES)
    return data
