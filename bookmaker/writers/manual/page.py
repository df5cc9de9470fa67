"""The whole manual as one page of HTML that needs no network: it can be searched and printed."""

from __future__ import annotations

import base64
import html
import re
from collections.abc import Mapping
from pathlib import Path

from markdown_it import MarkdownIt

from .chapters import FOLDER, anchor_of
from .places import SAYS, row_anchor

__all__ = ["SEARCH", "STYLE", "manual_page"]

TABLE = re.compile(r"<table>\n<thead>\n<tr>\n<th>(.*?)</th>.*?</table>", re.DOTALL)

COLOUR = re.compile(r"<code>(?:&quot;)?(#[0-9a-f]{6})(?:&quot;)?</code>")
"""A colour as the shelf file has it."""

STYLE = """
:root { color-scheme: light dark; }
body { font: 1rem/1.5 Georgia, serif; max-width: 48rem; margin: 0 auto; padding: 1rem; }
pre, code { font-family: monospace; font-size: 0.9em; }
pre { overflow-x: auto; border: 1px solid #8888; padding: 0.5rem; }
table { border-collapse: collapse; width: 100%; font-size: 0.9rem; }
td, th { border-bottom: 1px solid #8888; padding: 0.25rem 0.5rem; text-align: left; vertical-align: top; }
img { max-width: 100%; }
.swatch { width: 1.5em; height: 1em; vertical-align: middle; border: 1px solid #8888; }
form { position: sticky; top: 0; background: Canvas; padding: 0.5rem 0; }
input { font: inherit; width: 100%; box-sizing: border-box; }
:target { scroll-margin-top: 5rem; }
tr:target { background: Mark; color: MarkText; scroll-margin-top: 11rem; }
tr:target a { color: inherit; }
.hidden { display: none; }
@media print { form { display: none; } .hidden { display: block; } section.chapter { break-before: page; } }
"""

SEARCH = """
const field = document.querySelector('input');
const parts = [...document.querySelectorAll('section.part')];
const texts = parts.map(part => part.textContent.toLowerCase());
const none = document.querySelector('#none');
function search() {
  const words = field.value.toLowerCase().split(/\\s+/).filter(Boolean);
  let found = 0;
  parts.forEach((part, at) => {
    const here = words.every(word => texts[at].includes(word));
    part.classList.toggle('hidden', !here);
    found += here;
  });
  none.hidden = found > 0;
}
field.addEventListener('input', search);
document.addEventListener('click', event => {
  if (event.target.closest('a[href^="#"]')) { field.value = ''; search(); }
});
document.querySelector('form').addEventListener('submit', event => event.preventDefault());
"""


def manual_page(chapters: Mapping[str, str], style: str = "", script: str = "") -> str:
    """The page; `chapters` are texts in Markdown by name, in their order.

    A heading of a chapter has the anchor chapter-heading, the chapter itself the one of its name, rows of tables those
    of `row_anchor`. `style` and `script` are the addresses of `STYLE` and `SEARCH`; without them both are in the page.
    """
    looks = f'<link rel="stylesheet" href="{style}">' if style else f"<style>{STYLE}</style>"
    search = f'<script type="module" src="{script}"></script>' if script else f"<script>{SEARCH}</script>"
    body = "\n".join(_chapter(name, text) for name, text in chapters.items())
    return (
        '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>The manual of bookmaker</title>\n{looks}\n</head>\n<body>\n"
        '<form role="search"><label>Search the manual <input type="search"></label></form>\n'
        '<p id="none" hidden>Nothing has all these words.</p>\n'
        f"<main>\n{body}\n</main>\n{search}\n</body>\n</html>\n"
    )


def _chapter(name: str, text: str) -> str:
    rendered = MarkdownIt("commonmark").enable("table").render(text)
    rendered = re.sub(r'href="([^"]+)"', lambda link: f'href="{_target(name, html.unescape(link[1]))}"', rendered)
    rendered = re.sub(r'src="([^"]+)"', lambda link: f'src="{_embedded(html.unescape(link[1]))}"', rendered)
    rendered = rendered.replace("<pre>", '<pre tabindex="0">')  # what scrolls is reached by keyboard
    rendered = COLOUR.sub(_with_swatch, rendered)
    rendered = TABLE.sub(_with_anchors, rendered)
    parts = re.split(r"(?=<h[1-6]>)", rendered)
    return f'<section class="chapter">\n{"".join(_part(name, part) for part in parts if part.strip())}</section>'


def _with_anchors(table: re.Match[str]) -> str:
    """A table whose rows have anchors, where each row tells of a key or a message."""
    head = table[1]
    if not head.startswith("key of ") and head != SAYS:
        return table[0]

    def anchored(row: re.Match[str]) -> str:
        return f'<tr id="{row_anchor(head, _words(row[1]))}">\n<td>{row[1]}</td>'

    return re.sub(r"<tr>\n<td>(.*?)</td>", anchored, table[0])


def _with_swatch(colour: re.Match[str]) -> str:
    """A colour with a piece of itself beside it."""
    piece = f'<rect width="100%" height="100%" fill="{colour[1]}"/>'
    return f'<svg class="swatch" aria-hidden="true">{piece}</svg> {colour[0]}'


def _words(rendered: str) -> str:
    return html.unescape(re.sub(r"<[^>]+>", "", rendered))


def _part(name: str, part: str) -> str:
    if not (head := re.match(r"<h([1-6])>(.*?)</h\1>", part)):
        return part
    anchor = name if head[1] == "1" else f"{name}-{anchor_of(_words(head[2]))}"
    return f'<section class="part" id="{html.escape(anchor)}">\n{part}</section>\n'


def _target(name: str, link: str) -> str:
    """Where a link leads on the page: to another chapter, or out of it."""
    if link.startswith("#"):
        return f"#{name}-{link[1:]}"
    if found := re.fullmatch(r"([\w-]+)\.md(?:#(.+))?", link):
        return f"#{found[1]}-{found[2]}" if found[2] else f"#{found[1]}"
    return html.escape(link)


def _embedded(link: str) -> str:
    """A picture of the manual inside the page itself."""
    path = FOLDER / Path(link)
    return f"data:image/png;base64,{base64.b64encode(path.read_bytes()).decode('ascii')}"
