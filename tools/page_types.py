"""Types for the page's scripts: ``python -m tools.page_types`` writes what the OpenAPI document says as TypeScript.

With ``--check`` nothing is written, and the exit status is 1 where the file is not what the document says.
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, Final

from fastapi import FastAPI

from fioritura.files import write_beside
from fioritura.shelf.store import Shelf
from fioritura.web.app import create_app

TARGET: Final = Path(__file__).parents[1] / "src" / "fioritura" / "web" / "types.d.ts"
HEAD: Final = """\
// What the JSON API takes and gives, for the page's scripts. Made of its OpenAPI document: `python -m tools.page_types`.
// Answers hold every field; a request may leave out what has a default or may be null.
"""
_FORMS: Final = ("Body_", "HTTPValidationError", "ValidationError")
"""What the scripts do not see: forms of files, and how FastAPI would report a request that does not fit."""

_PLAIN: Final = {"string": "string", "integer": "number", "number": "number", "boolean": "boolean", "null": "null"}

Schema = Mapping[str, Any]


def document() -> Schema:
    """The OpenAPI document of the application."""
    with tempfile.TemporaryDirectory() as folder:
        shelf = Shelf(Path(folder))
        app = create_app(shelf, ()).app
        assert isinstance(app, FastAPI)
        found = app.openapi()
        shelf.close()
    return found


def types(document: Schema) -> str:
    """A document's schemas as TypeScript interfaces, by name."""
    schemas = document["components"]["schemas"]
    names = sorted(name for name in schemas if not name.startswith(_FORMS))
    return "\n".join([HEAD, *("\n".join(_interface(name, schemas[name])) for name in names)])


def _interface(name: str, schema: Schema) -> Iterator[str]:
    yield from _about(schema, "")
    yield f"export interface {name} {{"
    for field, value in schema["properties"].items():
        yield from _about(value, "  ")
        yield f"  {field}: {_type(value)};"
    yield "}\n"


def _about(schema: Schema, margin: str) -> Iterator[str]:
    if "description" in schema:
        yield f"{margin}/** {' '.join(schema['description'].split())} */"


def _type(schema: Schema) -> str:
    match schema:
        case {"$ref": str(path)}:
            return path.rpartition("/")[2]
        case {"anyOf": choices}:
            return " | ".join(dict.fromkeys(map(_type, choices)))
        case {"enum": values}:
            return " | ".join(f'"{value}"' for value in values)
        case {"type": "array", "prefixItems": items}:
            return f"[{', '.join(map(_type, items))}]"
        case {"type": "array", "items": items}:
            inner = _type(items)
            return f"({inner})[]" if "|" in inner else f"{inner}[]"
        case {"type": "object", "additionalProperties": dict() as values}:
            return f"Record<string, {_type(values)}>"
        case {"type": "object"}:
            return "Record<string, unknown>"
        case {"type": str(kind)}:
            return _PLAIN[kind]
        case _:
            return "unknown"


def main(arguments: list[str]) -> int:
    """Write the types, or say whether they are up to date."""
    text = types(document())
    if arguments != ["--check"]:
        write_beside(TARGET, text.encode())
        return 0
    if TARGET.read_text(encoding="utf-8") == text:
        return 0
    print(f"{TARGET.name} is not what the API says: run python -m tools.page_types.")
    return 1


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
