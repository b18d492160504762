"""A connection that brings no whole request in time is closed, so that nobody can hold the server's connections open by
saying nothing, or the head of a request letter by letter."""

from __future__ import annotations

import asyncio
from typing import Final

from uvicorn.protocols.http.h11_impl import H11Protocol

__all__ = ["HEAD_SEC", "PatientProtocol"]

HEAD_SEC: Final = 20.0
"""How long the head of a request may take to come in."""


class PatientProtocol(H11Protocol):
    """uvicorn's protocol with a limit on how long it waits for the head of a request."""

    patience_sec = HEAD_SEC
    _waiting: asyncio.TimerHandle | None = None

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Wait for the first request."""
        super().connection_made(transport)
        self._wait()

    def data_received(self, data: bytes) -> None:
        """Wait on where a request is not whole yet."""
        if self._waiting is None and self._is_idle():
            self._wait()
        super().data_received(data)
        if not self._is_idle():
            self._stop_waiting()

    def connection_lost(self, exc: Exception | None) -> None:
        """Nothing is waited for any more."""
        self._stop_waiting()
        super().connection_lost(exc)

    def _is_idle(self) -> bool:
        return self.cycle is None or self.cycle.response_complete

    def _wait(self) -> None:
        self._waiting = self.loop.call_later(self.patience_sec, self._give_up)

    def _stop_waiting(self) -> None:
        if self._waiting is not None:
            self._waiting.cancel()
            self._waiting = None

    def _give_up(self) -> None:
        self._waiting = None
        if self._is_idle():
            self.transport.close()
