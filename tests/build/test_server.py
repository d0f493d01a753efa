"""The server sends what a careful static host would: type, policy, compressed copy, and 304 for what is known."""

import gzip
import socket
from collections.abc import Iterator
from http.client import HTTPConnection, HTTPException, HTTPResponse
from pathlib import Path

import brotli
import pytest

from web.toolchain import wire
from web.toolchain.policy import CONTENT, TYPES
from web.toolchain.server import Site

TEXT = b"<title>A page</title>" * 100


@pytest.fixture
def site(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Site]:
    monkeypatch.setattr(wire, "WIRE", tmp_path / "wire")
    folder = tmp_path / "site"
    folder.mkdir()
    (tmp_path / "secret").write_text("not for sending")
    for ending in TYPES:
        (folder / f"file{ending}").write_bytes(TEXT)
    (folder / "index.html").write_bytes(TEXT)
    wire.pack(sorted(folder.iterdir()))
    with Site(folder) as site:
        yield site


def get(site: Site, path: str, method: str = "GET", **headers: str) -> tuple[HTTPResponse, bytes]:
    connection = HTTPConnection("127.0.0.1", site.server_port, timeout=10)
    connection.request(method, path, headers={name.replace("_", "-"): value for name, value in headers.items()})
    answer = connection.getresponse()
    body = answer.read()
    connection.close()
    return answer, body


@pytest.mark.parametrize(("ending", "kind"), TYPES.items())
def test_types_and_policy(site: Site, ending: str, kind: str) -> None:
    answer, body = get(site, f"/file{ending}")
    assert (answer.status, body, answer.headers["Content-Type"]) == (200, TEXT, kind)
    assert answer.headers["Content-Security-Policy"] == CONTENT
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    assert answer.headers["Referrer-Policy"] == "no-referrer"


@pytest.mark.parametrize(
    ("accepts", "coding", "unpack"),
    [("gzip, br", "br", brotli.decompress), ("gzip", "gzip", gzip.decompress), ("identity", None, bytes)],
)
def test_compressed_as_asked(site: Site, accepts: str, coding: str | None, unpack) -> None:
    answer, body = get(site, "/", Accept_Encoding=accepts)
    assert answer.headers["Content-Encoding"] == coding
    assert unpack(body) == TEXT
    assert int(answer.headers["Content-Length"]) == len(body)


def test_a_known_file_is_not_sent_again(site: Site) -> None:
    tag = get(site, "/")[0].headers["ETag"]
    answer, body = get(site, "/", If_None_Match=tag)
    assert (answer.status, body) == (304, b"")
    (site.folder / "index.html").write_bytes(b"changed")
    answer, body = get(site, "/", If_None_Match=tag)
    assert (answer.status, body) == (200, b"changed")


@pytest.mark.parametrize("path", ["/none", "/../secret", "/%2e%2e/secret", "/file.html/.."])
def test_nothing_outside_the_folder(site: Site, path: str) -> None:
    answer, body = get(site, path)
    assert b"not for sending" not in body
    assert answer.status == (404 if "secret" in path or "none" in path else 200)


def test_head_has_no_body_and_the_log_counts_bytes(site: Site) -> None:
    answer, body = get(site, "/file.txt", "HEAD")
    assert (answer.status, body) == (200, b"")
    get(site, "/file.txt")
    assert [(sent.path, sent.bytes) for sent in site.sent] == [("/file.txt", 0), ("/file.txt", len(TEXT))]


def test_stopping_cuts_open_connections(tmp_path: Path) -> None:
    (tmp_path / "index.html").write_bytes(TEXT)
    with Site(tmp_path) as site:
        kept = HTTPConnection("127.0.0.1", site.server_port, timeout=10)
        kept.request("GET", "/")
        kept.getresponse().read()
    kept.auto_open = False
    with pytest.raises((OSError, HTTPException)):
        ask_again(kept)
    kept.close()


def ask_again(kept: HTTPConnection) -> None:
    kept.request("GET", "/")
    kept.getresponse()


IMPOSSIBLE = ["/%00", "/index.html%00", "/a%0d%0aSet-Cookie:%20x", "/%ff%fe", "/%7f", "/..%5csecret", "/%e2%80%a8"]


@pytest.mark.parametrize("path", IMPOSSIBLE)
def test_what_no_name_holds_is_answered_with_400_and_the_connection_stays(site: Site, path: str) -> None:
    connection = HTTPConnection("127.0.0.1", site.server_port, timeout=10)
    for wanted, status in ((path, 400), ("/", 200)):
        connection.request("GET", wanted)
        answer = connection.getresponse()
        body = answer.read()
        assert answer.status == status
        assert b"not for sending" not in body
        assert "Set-Cookie" not in answer.headers
    connection.close()


@pytest.mark.parametrize(("target", "status"), [(b"/\x00", 400), (b"http://[", 400), (b"/" + b"a" * 5000, 404)])
def test_a_raw_request_gets_an_answer_too(site: Site, target: bytes, status: int) -> None:
    with socket.create_connection(("127.0.0.1", site.server_port), timeout=10) as connection:
        connection.sendall(b"GET " + target + b" HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")
        assert connection.recv(4096).startswith(b"HTTP/1.1 %d " % status)
