"""Serve the page on loopback."""

from __future__ import annotations

import socket
from pathlib import Path
from threading import Thread
from typing import Final

from fioritura.errors import OptionError

__all__ = ["LOOPBACK", "serve"]

LOOPBACK: Final = "127.0.0.1"


def serve(port: int, folder: Path | None = None) -> None:
    """Serve the page until interrupted; `folder` holds the shelf.

    Raises:
        OptionError: the port is taken.
        OutputError, ReadError: the shelf can't be opened.
    """
    import uvicorn

    from fioritura.shelf.store import Shelf, data_folder
    from fioritura.web.app import create_app, prepare_sound
    from fioritura.web.guard import hosts_of
    from fioritura.web.hearing import Sounds

    listener = _listener(port)
    port = listener.getsockname()[1]
    shelf = Shelf(folder or data_folder())
    sounds = Sounds()
    app = create_app(shelf, hosts_of(port), sounds)
    print(
        f"Fioritura is at http://{LOOPBACK}:{port} (stop it with Ctrl-C). Your shelf: {shelf.path.parent}", flush=True
    )
    Thread(target=prepare_sound, args=(shelf, sounds), daemon=True).start()
    config = uvicorn.Config(
        app,
        log_level="warning",
        access_log=False,
        server_header=False,
        timeout_keep_alive=30,
        timeout_graceful_shutdown=1,
    )
    try:
        uvicorn.Server(config).run([listener])
    finally:
        shelf.close()
        listener.close()


def _listener(port: int) -> socket.socket:
    listener = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listener.bind((LOOPBACK, port))
        listener.listen(128)
    except OSError as error:
        listener.close()
        raise OptionError(
            f"Port {port} can't be used ({error.strerror}): give another --port, or 0 for any."
        ) from None
    return listener
