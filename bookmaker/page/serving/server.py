"""What the browser is answered: the page, the shelf as it is, pictures, news; and what it asks for, by the worker."""

from __future__ import annotations

import asyncio
import json
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager, suppress
from pathlib import Path

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import FileResponse, Response, StreamingResponse
from starlette.routing import Route

from ...ground.kept.disk import KeptOnDisk
from ...ground.problems import Problem
from ..jobs import (
    JSON,
    Accept,
    Answer,
    Change,
    Changed,
    FirstShelf,
    Job,
    Looks,
    Make,
    Manual,
    Open,
    Painted,
    Propose,
    ReadTitles,
    Sheet,
    Tell,
    Told,
    Undo,
    Watch,
)
from ..last_made import listed_files, made_folder
from ..replies import refusal
from ..site_files import KINDS, site_files
from .foreman import Foreman
from .news import News, TooMany
from .watching import Watcher

__all__ = ["Server"]

MOST_PICTURES = 12_000
"""So many pictures are kept for the page; of more, those that came first are given up."""

MOST_UNDONE = 200
"""So many changes can be undone."""

NOTHING_DONE = Problem("nothing was done here that could be taken back", "")

MANUAL = ("manual", "manual.css", "manual.js")
"""The manual, as a page and what it takes."""

FOR_GOOD = {"cache-control": "private, max-age=31536000, immutable"}
"""A picture goes by a digest of itself: it never changes."""

AFRESH = {"cache-control": "no-store"}


class Server:
    """The page of one shelf."""

    def __init__(self, shelf: Path, kept: KeptOnDisk | None) -> None:
        self._news = News()
        self._foreman = Foreman(shelf, kept, self._hear)
        # who works at the shelf does not wait until sheets are made
        self._press = Foreman(shelf, kept, self._hear, looks=False)
        self._folder = made_folder(shelf)
        self._watcher = Watcher(self._foreman.look)
        self._watcher.watch(frozenset({shelf}))
        self._pictures: dict[str, bytes] = {}
        self._state = b""
        self._version = 0
        self._done: list[tuple[Changed, ...]] = []
        self._undone: list[tuple[Changed, ...]] = []

    def app(self) -> Starlette:
        """What answers, as long as it is let."""
        return Starlette(
            routes=[
                Route("/", self._page),
                Route("/state", self._get_state),
                Route("/news", self._get_news),
                Route("/picture/{name}", self._picture),
                Route("/thing", self._thing),
                Route("/opening", self._opening),
                Route("/change", self._change, methods=["POST"]),
                Route("/looks", self._looks, methods=["POST"]),
                Route("/undo", self._undo, methods=["POST"]),
                Route("/redo", self._redo, methods=["POST"]),
                Route("/propose", self._propose, methods=["POST"]),
                Route("/accept/{key}", self._accept, methods=["POST"]),
                *(Route(f"/{name}", self._manual) for name in MANUAL),
                Route("/make", self._make, methods=["POST"]),
                Route("/first", self._first, methods=["POST"]),
                Route("/titles", self._titles, methods=["POST"]),
                Route("/sheet", self._sheet),
                Route("/made/{name:path}", self._made),
                Route("/{name}", self._page),
            ],
            lifespan=self._running,
        )

    @asynccontextmanager
    async def _running(self, _: Starlette) -> AsyncIterator[None]:
        self._foreman.begin()
        watching = asyncio.create_task(self._watcher.run())
        try:
            yield
        finally:
            self._foreman.end()
            self._press.end()
            watching.cancel()
            with suppress(asyncio.CancelledError):
                await watching

    def _hear(self, said: Told | Painted | Watch) -> None:
        """What the worker says to all."""
        match said:
            case Painted(pictures):
                self._pictures |= pictures
                for oldest in [*self._pictures][:-MOST_PICTURES]:
                    del self._pictures[oldest]
            case Watch(paths):
                self._watcher.watch(paths)
            case Told("state", body):
                self._state, self._version = body, self._version + 1
                self._news.tell("state", str(self._version))
            case Told(event, body):
                self._news.tell(event, body.decode())

    async def _page(self, request: Request) -> Response:
        """A file of the page."""
        name = request.path_params.get("name", "index.html")
        data = site_files().get(name)
        if data is None:
            raise HTTPException(404)
        return Response(data, media_type=KINDS[name.rpartition(".")[2]], headers=AFRESH)

    async def _get_state(self, _: Request) -> Response:
        if not self._state:
            return Response(status_code=204, headers=AFRESH)
        return Response(
            self._state,
            media_type=JSON,
            headers={**AFRESH, "version": str(self._version), "journal": json.dumps(self._journal())},
        )

    async def _get_news(self, _: Request) -> Response:
        try:
            heard = self._news.listened(str(self._version))
        except TooMany:
            raise HTTPException(503) from None
        return StreamingResponse(heard, media_type="text/event-stream", headers=AFRESH)

    async def _picture(self, request: Request) -> Response:
        data = self._pictures.get(request.path_params["name"])
        if data is None:
            raise HTTPException(404)
        kind = "image/svg+xml" if data.startswith(b"<") else "image/png"
        return Response(data, media_type=kind, headers=FOR_GOOD)

    async def _thing(self, request: Request) -> Response:
        return await self._asked(Tell(request.query_params.get("id", "")))

    async def _opening(self, request: Request) -> Response:
        number = request.query_params.get("number", "")
        if not number.isdecimal() or len(number) > 6:
            raise HTTPException(404)
        return await self._asked(Open(request.query_params.get("id", ""), int(number)))

    async def _change(self, request: Request) -> Response:
        return await self._write(Change(await request.body()))

    async def _write(self, job: Job) -> Response:
        """A change made; it may be undone."""
        answer = await self._foreman.ask(job)
        if answer.changed:
            self._done = [*self._done, answer.changed][-MOST_UNDONE:]
            self._undone = []
            self._tell_journal()
        return _response(answer)

    async def _propose(self, request: Request) -> Response:
        return await self._asked(Propose(await request.body()))

    async def _accept(self, request: Request) -> Response:
        return await self._write(Accept(request.path_params["key"]))

    async def _manual(self, request: Request) -> Response:
        return await self._asked(Manual(request.url.path.rpartition("/")[2]))

    async def _undo(self, _: Request) -> Response:
        return await self._taken_back(self._done, self._undone)

    async def _redo(self, _: Request) -> Response:
        return await self._taken_back(self._undone, self._done)

    async def _taken_back(self, made: list[tuple[Changed, ...]], back: list[tuple[Changed, ...]]) -> Response:
        """The last of some changes taken back, and put among the others."""
        if not made:
            return _response(Answer(0, refusal([NOTHING_DONE]), refused=True))
        answer = await self._foreman.ask(Undo(made[-1]))
        if not answer.refused:
            made.pop()
            back.append(answer.changed)
            self._tell_journal()
        return _response(answer)

    def _tell_journal(self) -> None:
        self._news.tell("journal", json.dumps(self._journal()))

    def _journal(self) -> list[int]:
        """How many changes can be undone, and made again."""
        return [len(self._done), len(self._undone)]

    async def _make(self, _: Request) -> Response:
        return _response(await self._press.ask(Make()))

    async def _first(self, request: Request) -> Response:
        return await self._asked(FirstShelf(await request.body()))

    async def _titles(self, request: Request) -> Response:
        return await self._asked(ReadTitles(await request.body()))

    async def _sheet(self, request: Request) -> Response:
        page = request.query_params.get("page", "")
        if not page.isdecimal() or len(page) > 6:
            raise HTTPException(404)
        return await self._asked(Sheet(request.query_params.get("file", ""), int(page)))

    async def _made(self, request: Request) -> Response:
        """A file that was made; no other file of the folder."""
        name = request.path_params["name"]
        path = self._folder / name
        if name not in listed_files(self._folder) or not path.is_file():
            raise HTTPException(404)
        return FileResponse(path, headers=AFRESH, filename=path.name, content_disposition_type="inline")

    async def _looks(self, request: Request) -> Response:
        return await self._asked(Looks(await request.body()))

    async def _asked(self, job: Job) -> Response:
        """The answer of the worker to a job."""
        return _response(await self._foreman.ask(job))


def _response(answer: Answer) -> Response:
    return Response(answer.body, 409 if answer.refused else 200, media_type=answer.kind, headers=AFRESH)
