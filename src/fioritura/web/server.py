"""Serve the page: on loopback, or where asked for, to a network behind a token."""

from __future__ import annotations

import signal
import socket
import sys
import threading
import time
from contextlib import suppress
from ipaddress import IPv4Address, IPv6Address, ip_address
from pathlib import Path
from typing import TYPE_CHECKING, Final

from fioritura.errors import FiorituraError, OptionError
from fioritura.words import message, say

if TYPE_CHECKING:
    from fioritura.shelf.store import Shelf
    from fioritura.web.engraver import Engraver
    from fioritura.web.hearing import Sounds

__all__ = ["LOOPBACK", "serve"]

LOOPBACK: Final = "127.0.0.1"
PATIENCE_SEC: Final = 2.0
"""How long the address is held back for what the first visit asks for."""


def serve(
    port: int, folder: Path | None = None, listen: str = LOOPBACK, token: str = "", language: str | None = None
) -> None:
    """Serve the page until interrupted; `folder` holds the shelf.

    Beyond loopback, whoever wants to come in must give `token`; a new one is made where it is empty. On loopback a token is asked for
    where one is given, so that other users of the machine are kept out. `language` is that of readers who
    have chosen none on the page, else it is their browser's.

    Raises:
        OptionError: the port is taken, `listen` is no address of this machine, the token is too short, or nothing can be said in the language.
        OutputError, ReadError: the shelf can't be opened.
    """
    import uvicorn

    from fioritura.lesson.workers import worker_count
    from fioritura.shelf.store import Shelf, data_folder
    from fioritura.web.app import create_app
    from fioritura.web.engraver import Engraver
    from fioritura.web.guard import hosts_of
    from fioritura.web.hearing import Sounds
    from fioritura.web.patience import PatientProtocol
    from fioritura.web.token_check import TokenCheck, new_token

    address = _address(listen)
    check = TokenCheck(token := token or new_token()) if token or not address.is_loopback else None
    listener = _listener(port, str(address))
    port = listener.getsockname()[1]
    shelf = Shelf(folder or data_folder())
    sounds = Sounds()
    engraver = Engraver(worker_count())
    app = create_app(shelf, hosts_of(port, is_open=not address.is_loopback), sounds, engraver, check, language)
    _prepare(shelf, sounds, engraver)
    place = f"http://{_shown(address)}:{port}"
    print(say(message("served-at", address=place, shelf=str(shelf.path.parent))), flush=True)
    if check is not None:
        said = "served-token" if address.is_loopback else "served-beyond"
        print(say(message(said, token=token)), flush=True)
    config = uvicorn.Config(
        app,
        http=PatientProtocol,
        log_level="warning",
        access_log=False,
        server_header=False,
        timeout_keep_alive=30,
        timeout_graceful_shutdown=1,
    )
    if threading.current_thread() is threading.main_thread():
        signal.signal(signal.SIGTERM, lambda *_: sys.exit(0))
    try:
        uvicorn.Server(config).run([listener])
    finally:
        shelf.close()
        listener.close()


def _prepare(shelf: Shelf, sounds: Sounds, engraver: Engraver) -> None:
    """Get ready what the first visit asks for: its sound, and the engraver with its font. What takes longer goes on."""
    from fioritura.notation.engraving.fonts import font_folder
    from fioritura.web.app import prepare_sound

    def sound() -> None:
        with suppress(FiorituraError):
            prepare_sound(shelf, sounds)

    def engraving() -> None:
        engraver.warm()
        with suppress(FiorituraError):
            font_folder()

    threads = [threading.Thread(target=task, daemon=True) for task in (sound, engraving)]
    until = time.monotonic() + PATIENCE_SEC
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(max(0.0, until - time.monotonic()))


def _address(text: str) -> IPv4Address | IPv6Address:
    try:
        return ip_address(LOOPBACK if text == "localhost" else text)
    except ValueError:
        raise OptionError("no-listening-address", given=text) from None


def _shown(address: IPv4Address | IPv6Address) -> str:
    """An address as it stands in a link; for all addresses, the one by which others most likely reach this machine."""
    if address.is_unspecified:
        kind = socket.AF_INET if address.version == 4 else socket.AF_INET6
        with suppress(OSError), socket.socket(kind, socket.SOCK_DGRAM) as probe:
            probe.connect(("192.0.2.1" if address.version == 4 else "2001:db8::1", 9))
            address = ip_address(probe.getsockname()[0])
    return str(address) if address.version == 4 else f"[{address}]"


def _listener(port: int, address: str = LOOPBACK) -> socket.socket:
    kind = socket.AF_INET6 if ":" in address else socket.AF_INET
    listener = socket.socket(kind, socket.SOCK_STREAM)
    listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    listener.setsockopt(socket.SOL_SOCKET, socket.SO_KEEPALIVE, 1)
    try:
        listener.bind((address, port))
        listener.listen(128)
    except OSError as error:
        listener.close()
        raise OptionError("port-unusable", port=str(port), address=address, reason=str(error.strerror)) from None
    return listener
