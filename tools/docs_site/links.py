"""Pages that live elsewhere in the repository, and links that lead there."""

from __future__ import annotations

import posixpath
import re
from pathlib import Path
from typing import Final

__all__ = ["BROUGHT_IN", "ROOT", "as_on_site", "brought_in"]

ROOT: Final = Path(__file__).parents[2]

BROUGHT_IN: Final = {
    "CONTRIBUTING.md": "contributing.md",
    "CHANGELOG.md": "changes.md",
    "SECURITY.md": "security.md",
    "examples/plugin/README.md": "example-plugin.md",
}
"""Pages of the site by the files of the repository that they are."""

_LINK: Final = re.compile(r"(?<=\]\()(?P<path>[^)#\s:]+\.md)(?P<anchor>#[^)\s]*)?(?=\))")


def brought_in() -> dict[str, str]:
    """The pages from outside docs, ready for the site."""
    return {
        page: as_on_site((ROOT / source).read_text(encoding="utf-8"), source) for source, page in BROUGHT_IN.items()
    }


def as_on_site(markdown: str, source: str) -> str:
    """The text of a file of the repository with its links to other pages as they are on the site."""
    page_folder = posixpath.dirname(_page(source))

    def moved(link: re.Match[str]) -> str:
        target = posixpath.normpath(posixpath.join(posixpath.dirname(source), link["path"]))
        return posixpath.relpath(_page(target), page_folder or ".") + (link["anchor"] or "")

    return _LINK.sub(moved, markdown)


def _page(source: str) -> str:
    return BROUGHT_IN.get(source) or source.removeprefix("docs/")
