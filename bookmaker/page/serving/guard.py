"""Who is let in: the page that was opened here, and nothing else that a browser has open.

Only this machine reaches the port, but every page in its browser does too. So what asks must know the token in the
address, must have meant this host (else a name that leads here would do), and what changes anything must come from the
page itself. Answers forbid the page whatever is not its own.
"""

from __future__ import annotations

import asyncio
import hmac
from collections.abc import Mapping
from dataclasses import dataclass, field
from http import HTTPStatus

from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

__all__ = ["MOST_BYTES", "POLICY", "Guard"]

MOST_BYTES = 6_000_000
"""The largest body that is read: a spreadsheet of books."""

SLOWEST = 15.0
"""So long, in seconds, a body may take to come in."""

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; connect-src 'self'; "
    "frame-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
"""Content Security Policy, Level 3 (W3C): nothing from elsewhere, no script or style within the page."""

HEADERS = {
    "content-security-policy": POLICY,
    "referrer-policy": "no-referrer",
    "x-content-type-options": "nosniff",
    "cross-origin-resource-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
}

KINDS = ("application/json", "application/octet-stream")
"""Media types of what is sent here; a form of another page can send neither without being asked first."""


class _Refused(Exception):  # noqa: N818 - it is the answer
    """The body is not read."""

    def __init__(self, status: HTTPStatus) -> None:
        super().__init__(status.phrase)
        self.status = status


@dataclass
class Guard:
    """Lets through what is meant for the page at `http://HOST/TOKEN/…`, with the token taken off the path."""

    app: ASGIApp
    host: str
    token: str = field(repr=False)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one request (ASGI)."""
        if scope["type"] == "lifespan":
            await self.app(scope, receive, send)
            return
        if scope["type"] != "http":
            await send({"type": "websocket.close", "code": 1008})
            return
        heads = {name.decode("latin-1"): value.decode("latin-1") for name, value in scope["headers"]}
        status = self._refusal(scope, heads)
        if status is None:
            inner = {**scope, "path": scope["path"].removeprefix(f"/{self.token}")}
            try:
                await self.app(inner, _Limited(receive).receive, _sending(send))
            except _Refused as refused:
                status = refused.status
        if status is not None:
            await PlainTextResponse(status.phrase, status, {"connection": "close"})(scope, receive, _sending(send))

    def _refusal(self, scope: Scope, heads: Mapping[str, str]) -> HTTPStatus | None:
        """Why a request is not let through; None if it is."""
        writes = scope["method"] not in ("GET", "HEAD")
        own = f"http://{self.host}"
        token, slash, _ = scope["path"].removeprefix("/").partition("/")
        if not hmac.compare_digest(heads.get("host", "").encode(), self.host.encode()):
            return HTTPStatus.MISDIRECTED_REQUEST
        if heads.get("origin", "" if writes else own) != own:
            return HTTPStatus.FORBIDDEN
        if heads.get("sec-fetch-site", "none") not in ("same-origin", "none"):
            return HTTPStatus.FORBIDDEN
        if not hmac.compare_digest(token.encode(), self.token.encode()) or not slash:
            return HTTPStatus.NOT_FOUND
        return _refusal_of_body(heads) if writes else None


def _refusal_of_body(heads: Mapping[str, str]) -> HTTPStatus | None:
    """Why a body is not even read."""
    if heads.get("content-type", "").partition(";")[0].strip() not in KINDS:
        return HTTPStatus.UNSUPPORTED_MEDIA_TYPE
    length = heads.get("content-length", "")
    if not length:
        return HTTPStatus.LENGTH_REQUIRED
    return None if length.isdecimal() and int(length) <= MOST_BYTES else HTTPStatus.REQUEST_ENTITY_TOO_LARGE


class _Limited:
    """What comes in of a body, as long as it is not too much and comes in time."""

    def __init__(self, receive: Receive) -> None:
        self._receive = receive
        self._bytes = 0
        self._whole = False

    async def receive(self) -> Message:
        """The next part."""
        if self._whole:  # what comes now is that the browser has gone, whenever it goes
            return await self._receive()
        try:
            message = await asyncio.wait_for(self._receive(), SLOWEST)
        except TimeoutError:
            raise _Refused(HTTPStatus.REQUEST_TIMEOUT) from None
        self._bytes += len(message.get("body", b""))
        self._whole = not message.get("more_body", False)
        if self._bytes > MOST_BYTES:
            raise _Refused(HTTPStatus.REQUEST_ENTITY_TOO_LARGE)
        return message


def _sending(send: Send) -> Send:
    """The same, with the heads that every answer has."""

    async def with_heads(message: Message) -> None:
        if message["type"] == "http.response.start":
            heads = [(name.encode(), value.encode()) for name, value in HEADERS.items()]
            message = {**message, "headers": [*message["headers"], *heads]}
        await send(message)

    return with_heads
