"""What mkdocs calls while it builds the site."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

sys.path.insert(0, str(Path(__file__).parents[2]))

from mkdocs.structure.files import File, Files

from tools.docs_site.commands import commands_page
from tools.docs_site.gallery import Gallery
from tools.docs_site.home import Home
from tools.docs_site.links import ROOT, as_on_site, brought_in
from tools.docs_site.media import made
from tools.docs_site.ornaments import Ornaments, family_pages

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig
    from mkdocs.structure.pages import Page


def on_config(config: MkDocsConfig) -> MkDocsConfig:
    """List the families' pages under Ornaments."""
    pages = [{title: path} for title, path in family_pages()]
    for entry in config.nav or []:
        if "Ornaments" in entry:
            entry["Ornaments"] = [entry["Ornaments"], *pages]
    return config


def on_files(files: Files, *, config: MkDocsConfig) -> Files:
    """Put what the program makes in place of what was kept, and add the rest: pages, pictures and sounds."""
    for kept in [file for file in files if file.src_uri.startswith("gallery/") and not file.src_uri.endswith(".abc")]:
        files.remove(kept)
    ornaments, gallery, home = Ornaments(), Gallery.made(), Home.made()
    content: dict[str, str | bytes] = {
        **made([*home.media(), *gallery.media(), *ornaments.media()]),
        **dict(ornaments.pages()),
        **brought_in(),
        "gallery/README.md": gallery.page(),
        "reference/commands.md": commands_page(),
        "style/icon.svg": (ROOT / "src/fioritura/web/static/icon.svg").read_bytes(),
    }
    for path, data in content.items():
        files.append(File.generated(config, path, content=data))
    return files


def on_page_markdown(markdown: str, *, page: Page, config: MkDocsConfig, files: Files) -> str:
    """Lead links out of docs to the pages that stand here for those files."""
    return markdown if page.file.generated_by else as_on_site(markdown, f"docs/{page.file.src_uri}")
