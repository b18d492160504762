"""Archives of shelves with something changed."""

from __future__ import annotations

import io
import json
import zipfile
from collections.abc import Mapping

__all__ = ["TABLE", "rewritten"]

TABLE = "shelf.json"


def rewritten(archive: bytes, table: object, changed: Mapping[str, bytes] | None = None) -> bytes:
    """The archive with another table (bytes as they are, anything else as JSON) and other content of some entries."""
    entries = {TABLE: table if isinstance(table, bytes) else json.dumps(table).encode(), **(changed or {})}
    file = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(archive)) as source, zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as target:
        for name in source.namelist():
            target.writestr(name, entries[name] if name in entries else source.read(name))
    return file.getvalue()
