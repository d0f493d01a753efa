"""A static server for the built page: right types, the security policy, compressed copies, nothing else.

Kept to the standard library because `serve` and the tests need one that works without a network; it is not
meant to stand on the internet.
"""

from __future__ import annotations

import contextlib
import socket
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import NamedTuple
from urllib.parse import unquote, urlsplit

from .policy import HEADERS, TYPES
from .wire import digest_of, packed

Request = socket.socket | tuple[bytes, socket.socket]


class Sent(NamedTuple):
    path: str
    status: int
    bytes: int


class Handler(BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    server: Site
    headers_sent = HEADERS

    def do_GET(self) -> None:
        self.answer(with_body=True)

    def do_HEAD(self) -> None:
        self.answer(with_body=False)

    def answer(self, with_body: bool) -> None:
        asked = self.asked()
        if asked is None:
            self.send(HTTPStatus.BAD_REQUEST, b"no such path can be", {"Content-Type": TYPES[".txt"]}, with_body)
            return
        path = self.server.find(asked)
        if path is None:
            self.send(HTTPStatus.NOT_FOUND, b"not found", {"Content-Type": TYPES[".txt"]}, with_body)
            return
        tag = f'"{digest_of(path)}"'
        headers = {"Content-Type": TYPES.get(path.suffix, "application/octet-stream"), "ETag": tag, "Vary": "Accept-Encoding"}
        if tag in self.headers.get("If-None-Match", ""):
            self.send(HTTPStatus.NOT_MODIFIED, b"", headers, with_body=False)
            return
        taken = self.headers.get("Accept-Encoding", "")
        for coding in ("br", "gzip"):
            if coding in taken and (copy := packed(path, coding)):
                path = copy
                headers["Content-Encoding"] = coding
                break
        self.send(HTTPStatus.OK, path.read_bytes(), headers, with_body)

    def asked(self) -> str | None:
        """The path asked for; None where it holds what no file's name does: a NUL, a line's end, a broken escape."""
        try:
            path = unquote(urlsplit(self.path).path, errors="strict")
        except ValueError:
            return None
        return path if path.isprintable() and "\\" not in path else None

    def send(self, status: HTTPStatus, body: bytes, headers: dict[str, str], with_body: bool) -> None:
        # Before the answer: whoever has it may look at the log at once.
        self.server.sent.append(Sent(self.path.partition("?")[0], status, len(body) if with_body else 0))
        self.send_response(status)
        for name, value in {**self.headers_sent, **headers}.items():
            self.send_header(name, value)
        if status != HTTPStatus.NOT_MODIFIED:
            self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if with_body:
            self.wfile.write(body)

    def log_message(self, *_: object) -> None:
        """Quiet: a page of requests helps nobody at the bench."""


class Site(ThreadingHTTPServer):
    """Serve a folder: `with Site(folder, port) as site: site.url`. Stopping cuts open connections too."""

    daemon_threads = True
    allow_reuse_address = True
    request_queue_size = 64

    def __init__(self, folder: Path, port: int = 0, host: str = "127.0.0.1", handler: type[Handler] = Handler) -> None:
        self.folder = folder.resolve()
        self.sent: list[Sent] = []
        self.connections: set[Request] = set()
        super().__init__((host, port), handler)

    @property
    def url(self) -> str:
        # localhost counts as a secure context, as the loopback address does.
        return f"http://localhost:{self.server_port}/"

    def find(self, path: str) -> Path | None:
        try:
            wanted = (self.folder / path.lstrip("/")).resolve()
            if wanted.is_dir():
                wanted /= "index.html"
            return wanted if wanted.is_file() and wanted.is_relative_to(self.folder) else None
        except OSError:  # longer than a name can be
            return None

    def process_request(self, request: Request, client_address: object) -> None:
        self.connections.add(request)
        super().process_request(request, client_address)

    def shutdown_request(self, request: Request) -> None:
        self.connections.discard(request)
        super().shutdown_request(request)

    def handle_error(self, request: Request, client_address: object) -> None:
        """A browser that closes a connection early is no error."""

    def __enter__(self) -> Site:
        Thread(target=self.serve_forever, kwargs={"poll_interval": 0.05}, daemon=True).start()
        return self

    def __exit__(self, *_: object) -> None:
        self.shutdown()
        self.server_close()
        for connection in list(self.connections):
            with contextlib.suppress(OSError):
                assert isinstance(connection, socket.socket)
                connection.shutdown(socket.SHUT_RDWR)


def network_address() -> str | None:
    """This machine's address on its network, as the system would choose it; nothing is sent."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe, contextlib.suppress(OSError):
        probe.connect(("192.0.2.1", 9))
        return str(probe.getsockname()[0])
    return None
