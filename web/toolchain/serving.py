"""`build.py serve`: the built page on an address that is printed."""

from __future__ import annotations

import contextlib
from time import sleep

from .places import DIST, stop
from .server import Site, network_address

PLAIN_HTTP = """\
  Over plain http on a network address a browser gives no service worker and no storage that lasts: there the
  page computes, but it does not work offline and cannot be installed. For the pits, put web/dist on any https host."""


def serve(port: int, lan: bool) -> None:
    try:
        site = Site(DIST, port, "0.0.0.0" if lan else "127.0.0.1")
    except OSError as problem:
        stop(f"port {port} cannot be used ({problem.strerror}); take another with --port")
    with site:
        print(f"\nStanchion is at {site.url}  (stop with Ctrl+C)", flush=True)
        if lan:
            address = network_address() or stop("this machine has no network address; leave --lan out")
            print(f"On this network:  http://{address}:{site.server_port}/\n{PLAIN_HTTP}", flush=True)
        with contextlib.suppress(KeyboardInterrupt):
            while True:
                sleep(3600)
    print("\nstopped")
