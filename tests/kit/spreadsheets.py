"""The least that makes a spreadsheet, in either of the two standards, written by hand."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping, Sequence
from xml.sax.saxutils import escape

__all__ = ["archive", "office", "open_document"]

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
OF_PACKAGES = "http://schemas.openxmlformats.org/package/2006/relationships"
OASIS = "urn:oasis:names:tc:opendocument:xmlns"


def archive(parts: Mapping[str, str]) -> bytes:
    """A zip archive of texts."""
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as made:
        for name, text in parts.items():
            made.writestr(name, text)
    return data.getvalue()


def office(rows: Sequence[str], shared: Sequence[str] = (), formats: Sequence[int] = (0,)) -> bytes:
    """An Office Open XML workbook; each row is its cells as XML."""
    sheet = "".join(f"<row>{row}</row>" for row in rows)
    texts = "".join(f"<si><t>{escape(text)}</t></si>" for text in shared)
    styles = "".join(f'<xf numFmtId="{number}"/>' for number in formats)
    return archive(
        {
            "xl/workbook.xml": f'<workbook xmlns="{MAIN}" xmlns:r="{RELATIONS}"><sheets>'
            '<sheet name="Books" sheetId="1" r:id="rId7"/></sheets></workbook>',
            "xl/_rels/workbook.xml.rels": f'<Relationships xmlns="{OF_PACKAGES}">'
            '<Relationship Id="rId7" Target="worksheets/sheet3.xml"/></Relationships>',
            "xl/sharedStrings.xml": f'<sst xmlns="{MAIN}">{texts}</sst>',
            "xl/styles.xml": f'<styleSheet xmlns="{MAIN}"><numFmts><numFmt numFmtId="164" formatCode="dd/mm"/>'
            '<numFmt numFmtId="165" formatCode="0.0&quot; mm&quot;"/></numFmts>'
            f"<cellXfs>{styles}</cellXfs></styleSheet>",
            "xl/worksheets/sheet3.xml": f'<worksheet xmlns="{MAIN}"><sheetData>{sheet}</sheetData></worksheet>',
        }
    )


def open_document(rows: Sequence[str]) -> bytes:
    """An OpenDocument spreadsheet; each row is an element as XML."""
    names = " ".join(f'xmlns:{name}="{OASIS}:{name}:1.0"' for name in ("office", "table", "text"))
    body = f"<office:body><office:spreadsheet><table:table>{''.join(rows)}</table:table>"
    content = f"<office:document-content {names}>{body}</office:spreadsheet></office:body></office:document-content>"
    return archive({"mimetype": "application/vnd.oasis.opendocument.spreadsheet", "content.xml": content})
