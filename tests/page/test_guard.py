"""A hostile page in the same browser, and worse: nothing is let in but the page that was opened."""

from __future__ import annotations

import contextlib
import http.client
import socket
import time
from collections.abc import Iterator

import pytest

from bookmaker.page.serving.guard import MOST_BYTES
from tests.kit.shelves import ONE_BOOK
from tests.kit.shown import Running, running, until


@pytest.fixture(scope="module")
def shown(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Running]:
    """A shelf of one book, with a secret beside it that it does not name."""
    folder = tmp_path_factory.mktemp("house")
    (folder / "secret.txt").write_text("the key lies under the mat", encoding="utf-8")
    (folder / "shelf.yaml").write_text(ONE_BOOK, encoding="utf-8")
    with running(folder / "shelf.yaml") as found:
        until(lambda: asked(found, "GET", "state")[0] == 200)
        yield found


def asked(
    shown: Running, method: str, path: str, headers: dict[str, str] | None = None, body: bytes | None = None
) -> tuple[int, bytes, http.client.HTTPMessage]:
    """The answer to one request, as its own page would ask, but for the headers given."""
    connection = http.client.HTTPConnection("127.0.0.1", shown.port, timeout=30)
    whole = path if path.startswith("/") else shown.path + path
    sent = {"Host": shown.host} | ({"Origin": f"http://{shown.host}"} if method == "POST" else {}) | (headers or {})
    try:
        connection.putrequest(method, whole, skip_host=True, skip_accept_encoding=True)
        for name, value in sent.items():
            connection.putheader(name, value)
        if body is not None and "Content-Length" not in sent:
            connection.putheader("Content-Length", str(len(body)))
        connection.endheaders()
        if body:
            connection.send(body)
        answer = connection.getresponse()
        return answer.status, answer.read(), answer.headers
    finally:
        connection.close()


def test_its_own_page_is_answered_and_kept_to_itself(shown: Running) -> None:
    status, body, headers = asked(shown, "GET", "")
    assert status == 200 and b"<!doctype html>" in body
    policy = headers["Content-Security-Policy"]
    assert "default-src 'none'" in policy and "unsafe" not in policy and "frame-ancestors 'none'" in policy
    assert headers["Referrer-Policy"] == "no-referrer" and headers["X-Content-Type-Options"] == "nosniff"
    assert b"http:" not in body and b"https:" not in body and b"//" not in body


@pytest.mark.parametrize("host", ["evil.example", "localhost.evil.example", "127.0.0.1", "127.0.0.1:1", ""])
def test_a_name_that_leads_here_is_not_enough(shown: Running, host: str) -> None:
    status, body, _ = asked(shown, "GET", "state", {"Host": host})
    assert status in (400, 421) and b"Tide" not in body


@pytest.mark.parametrize(
    "headers", [{"Origin": "https://evil.example"}, {"Origin": "null"}, {"Sec-Fetch-Site": "cross-site"}]
)
@pytest.mark.parametrize(("method", "path"), [("GET", "state"), ("GET", "news"), ("POST", "change")])
def test_another_page_gets_nothing(shown: Running, method: str, path: str, headers: dict[str, str]) -> None:
    body = b"{}" if method == "POST" else None
    assert asked(shown, method, path, {"Content-Type": "application/json"} | headers, body)[0] == 403


def test_a_form_of_another_page_changes_nothing(shown: Running) -> None:
    plain = {"Content-Type": "text/plain"}
    assert asked(shown, "POST", "change", plain, b"{}")[0] == 415
    assert asked(shown, "POST", "change", {}, b"{}")[0] == 415
    assert asked(shown, "POST", "change", {"Origin": "", "Content-Type": "application/json"}, b"{}")[0] == 403


@pytest.mark.parametrize("path", ["/", "/state", "/x/state", "//state", "/index.html", "/" + "A" * 32 + "/state"])
def test_without_the_token_there_is_nothing(shown: Running, path: str) -> None:
    assert asked(shown, "GET", path)[0] == 404


@pytest.mark.parametrize(
    "path",
    [
        "secret.txt", "shelf.yaml", "../secret.txt", "..%2fsecret.txt", "picture/..%2f..%2fsecret.txt", "server.py",
        "picture/../shelf.yaml", "%2e%2e/server.py", "....//secret.txt", "made/..%2fsecret.txt", "made/secret.txt",
        "/etc/passwd", "index.html%00.png", "picture/%00", "sheet?file=../secret.txt&page=0", "C:%5csecret.txt",
    ],
)  # fmt: skip
def test_only_what_the_page_is_made_of_is_served(shown: Running, path: str) -> None:
    status, body, _ = asked(shown, "GET", path)
    assert status in (400, 404, 409) and b"mat" not in body and b"Tide Tables" not in body


def test_a_body_of_a_hundred_megabytes_is_not_read(shown: Running) -> None:
    json = {"Content-Type": "application/json"}
    assert asked(shown, "POST", "change", json | {"Content-Length": "100000000"}, b"{")[0] == 413
    with socket.create_connection(("127.0.0.1", shown.port), timeout=20) as wire:
        head = f"POST {shown.path}change HTTP/1.1\r\nHost: {shown.host}\r\nOrigin: http://{shown.host}\r\n"
        wire.sendall((head + "Content-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n").encode())
        sent = 0
        with contextlib.suppress(OSError):
            while sent < 100_000_000:
                wire.sendall(b"100000\r\n" + b"x" * 0x100000 + b"\r\n")
                sent += 0x100000
        assert sent < 6 * MOST_BYTES
    assert asked(shown, "GET", "state")[0] == 200


def test_five_hundred_connections_end_and_the_page_is_still_there(shown: Running) -> None:
    wires = []
    try:
        for _ in range(500):
            wire = socket.create_connection(("127.0.0.1", shown.port), timeout=20)
            wire.sendall(b"GET / HT")
            wires.append(wire)
        until(lambda: _answered(shown), within=25)
    finally:
        for wire in wires:
            wire.close()


def _answered(shown: Running) -> bool:
    try:
        return asked(shown, "GET", "state")[0] == 200
    except OSError:
        return False


def test_a_slow_client_is_let_go(shown: Running) -> None:
    begun = time.monotonic()
    with socket.create_connection(("127.0.0.1", shown.port), timeout=20) as wire:
        wire.sendall(b"GET /")
        with contextlib.suppress(ConnectionResetError):
            assert wire.recv(1) == b""
    assert time.monotonic() - begun < 15
    assert _answered(shown)
