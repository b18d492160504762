"""HTML by templates, which lie beside the rooms that use them."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from jinja2 import Environment

__all__ = ["templates_of"]


@lru_cache(maxsize=16)
def templates_of(package: str, folder: str = "templates") -> Environment:
    """The templates in a folder of a package: what is put into them is escaped, and a name that is missing is an error."""
    from jinja2 import Environment, PackageLoader, StrictUndefined

    return Environment(
        loader=PackageLoader(package, folder),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
