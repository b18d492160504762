"""`fioritura serve`: the page, on this machine only unless asked for."""

from __future__ import annotations

import argparse
import os
from pathlib import Path
from typing import Any

__all__ = ["add_parser", "run"]

_ABOUT = """\
Open a page on this machine: the tune on the stand, plain over ornamented, with every figure to be kept, left out or
replaced; to be heard with a band; and a shelf for tunes and arrangements.

  fioritura serve                     then open http://127.0.0.1:8420
  fioritura serve --port 9000 --data ~/Music/shelf
  fioritura serve --listen 0.0.0.0    for a tablet on the stand, in a network that you trust

The page is served to this machine only unless --listen says otherwise, and asks nothing of any other. Everything is kept
in one folder (--data). With --listen whoever can reach the address and has the token that is printed can see and change
everything; nothing is encrypted on its way. FIORITURA_TOKEN sets a token of your own, and asks for it on
this machine too, where others have an account.
"""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser(
        "serve",
        help="open the page: stand, shelf and sound in the browser",
        description=_ABOUT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--port", type=int, default=8420, metavar="N", help="default: 8420; 0 takes any free one")
    parser.add_argument(
        "--data", type=Path, metavar="DIR", help="folder of the shelf (default: FIORITURA_DATA, or yours)"
    )
    parser.add_argument(
        "--listen",
        default="127.0.0.1",
        metavar="ADDRESS",
        help="address to serve on; any but this machine's own loopback asks each visitor for a token",
    )
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Serve until interrupted."""
    from fioritura.errors import OptionError, ToolError

    if not 0 <= options.port <= 65_535:
        raise OptionError("cli-no-port", given=str(options.port))
    try:
        from fioritura.web.server import serve
    except ModuleNotFoundError as error:
        if (error.name or "").startswith("fioritura"):
            raise
        raise ToolError("cli-page-lacks", name=str(error.name)) from None
    token = os.environ.get("FIORITURA_TOKEN", "").strip()
    serve(options.port, options.data, options.listen, token, options.asked_language)
    return 0
