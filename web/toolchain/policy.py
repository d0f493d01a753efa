"""The one place of the security policy: sent by our server, written for hosts that read a file of headers."""

from __future__ import annotations

from pathlib import Path

# As headers, since a meta tag does not reach the worker.
CONTENT = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self' 'wasm-unsafe-eval'",
        "worker-src 'self'",
        "connect-src 'self'",
        "style-src 'self'",
        "img-src 'self' data: blob:",
        "font-src 'self'",
        "manifest-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
        "frame-ancestors 'none'",
    )
)
HEADERS = {
    "Content-Security-Policy": CONTENT,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    # Always asked again (a 304 when nothing changed): the service worker keeps the files, not the HTTP cache.
    "Cache-Control": "no-cache",
}
TYPES = {
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".mjs": "text/javascript; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".json": "application/json",
    ".webmanifest": "application/manifest+json",
    ".wasm": "application/wasm",
    ".svg": "image/svg+xml",
    ".png": "image/png",
    ".ico": "image/x-icon",
    ".woff2": "font/woff2",
    ".txt": "text/plain; charset=utf-8",
}
HOST_FILES = ("_headers", ".htaccess")


def write(folder: Path) -> None:
    lines = "".join(f"  {name}: {value}\n" for name, value in HEADERS.items())
    (folder / "_headers").write_text(f"/*\n{lines}")
    headers = "".join(f'  Header always set {name} "{value}"\n' for name, value in HEADERS.items())
    types = "".join(f"AddType {kind.partition(';')[0]} {ending}\n" for ending, kind in TYPES.items())
    packed = " ".join(
        kind.partition(";")[0] for kind in dict.fromkeys(TYPES.values()) if not kind.startswith(("image/png", "font/"))
    )
    (folder / ".htaccess").write_text(
        f"<IfModule mod_headers.c>\n{headers}</IfModule>\n{types}"
        f"<IfModule mod_deflate.c>\n  AddOutputFilterByType DEFLATE {packed}\n</IfModule>\n"
    )
