"""Makes the two workbooks with offers of sheet anew: ``python make_workbooks.py`` beside this file.

A yard sends its prices as a workbook. Both formats are written here, piece by piece and with one fixed date, so that
the same bytes come out every time. All prices are invented.
"""

from __future__ import annotations

import zipfile
from collections.abc import Sequence
from pathlib import Path
from xml.sax.saxutils import escape

HERE = Path(__file__).parent / "workshops" / "offers"
Row = tuple[str | float, ...]
HEADER: Row = ("part", "vendor", "pack", "price", "board-width", "board-depth", "mass", "note")

TIMBER_YARD: list[Row] = [
    HEADER,
    ("mdf-6", "timber", 1, 9.00, "600 mm", "600 mm", "1.65 kg", ""),
    ("mdf-6", "timber", 1, 3.10, "300 mm", "300 mm", "420 g", "offcut"),
    ("ply-6", "timber", 1, 13.50, "600 mm", "600 mm", "1.5 kg", ""),
    ("ply-6", "timber", 1, 3.60, "300 mm", "300 mm", "380 g", "offcut"),
    ("mdf-9", "timber", 1, 12.40, "600 mm", "600 mm", "2.45 kg", ""),
    ("ply-8", "timber", 1, 17.90, "600 mm", "600 mm", "2.0 kg", ""),
    ("ply-8", "timber", 1, 34.50, "1200 mm", "600 mm", "4.0 kg", ""),
    ("ply-9", "timber", 1, 20.50, "600 mm", "600 mm", "2.25 kg", ""),
    ("ply-9", "timber", 1, 39.50, "1200 mm", "600 mm", "4.5 kg", ""),
    ("acrylic-5", "timber", 1, 26.00, "600 mm", "600 mm", "2.2 kg", ""),
    ("acrylic-5", "timber", 1, 5.40, "300 mm", "200 mm", "370 g", "offcut"),
    ("alu-4", "timber", 1, 68.00, "600 mm", "600 mm", "4.0 kg", ""),
    ("alu-4", "timber", 1, 5.20, "200 mm", "150 mm", "330 g", "offcut"),
]
LUMBER_DOCK: list[Row] = [
    HEADER,
    ("mdf-6", "dock", 1, 10.90, "24 in", "24 in", "1.7 kg", ""),
    ("mdf-6", "dock", 1, 4.10, "12 in", "12 in", "430 g", ""),
    ("ply-6", "dock", 1, 16.80, "24 in", "24 in", "1.55 kg", ""),
    ("ply-6", "dock", 1, 5.20, "12 in", "12 in", "390 g", ""),
    ("mdf-9", "dock", 1, 15.60, "24 in", "24 in", "2.5 kg", ""),
    ("ply-8", "dock", 1, 23.40, "24 in", "24 in", "2.05 kg", ""),
    ("ply-8", "dock", 1, 43.90, "48 in", "24 in", "4.1 kg", ""),
    ("ply-9", "dock", 1, 27.20, "24 in", "24 in", "2.3 kg", ""),
    ("acrylic-5", "dock", 1, 36.50, "24 in", "24 in", "2.25 kg", ""),
    ("acrylic-5", "dock", 1, 7.60, "12 in", "8 in", "370 g", ""),
    ("alu-4", "dock", 1, 94.00, "24 in", "24 in", "4.1 kg", ""),
    ("alu-4", "dock", 1, 7.90, "8 in", "6 in", "340 g", ""),
]

HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
SHEET_TYPES = "application/vnd.openxmlformats-officedocument.spreadsheetml"
RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"


def pack(path: Path, entries: dict[str, str]) -> None:
    """Write a ZIP whose entries all carry one fixed date, not packed: packing differs between versions."""
    with zipfile.ZipFile(path, "w") as archive:
        for name, text in entries.items():
            entry = zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0))
            entry.create_system = 3
            entry.external_attr = 0o644 << 16
            archive.writestr(entry, text.encode())


def write_xlsx(path: Path, rows: Sequence[Row]) -> None:
    """Write a workbook with one sheet, ``offers``; prices are numbers shown with two places."""
    lines = [
        f'<row r="{at}">{"".join(_xlsx_cell(at, c, v) for c, v in enumerate(row))}</row>'
        for at, row in enumerate(rows, 1)
    ]
    relation = f'{HEAD}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
    pack(
        path,
        {
            "[Content_Types].xml": f'{HEAD}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
            '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
            '<Default Extension="xml" ContentType="application/xml"/>'
            f'<Override PartName="/xl/workbook.xml" ContentType="{SHEET_TYPES}.sheet.main+xml"/>'
            f'<Override PartName="/xl/worksheets/sheet1.xml" ContentType="{SHEET_TYPES}.worksheet+xml"/>'
            f'<Override PartName="/xl/styles.xml" ContentType="{SHEET_TYPES}.styles+xml"/></Types>',
            "_rels/.rels": f'{relation}<Relationship Id="rId1" Type="{RELATIONS}/officeDocument" '
            'Target="xl/workbook.xml"/>'
            "</Relationships>",
            "xl/workbook.xml": f'{HEAD}<workbook xmlns="{MAIN}" xmlns:r="{RELATIONS}"><sheets>'
            '<sheet name="offers" sheetId="1" r:id="rId1"/></sheets></workbook>',
            "xl/_rels/workbook.xml.rels": f'{relation}<Relationship Id="rId1" Type="{RELATIONS}/worksheet" '
            f'Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="{RELATIONS}/styles" Target="styles.xml"/>'
            "</Relationships>",
            "xl/styles.xml": f'{HEAD}<styleSheet xmlns="{MAIN}"><fonts count="1"><font/></fonts>'
            '<fills count="1"><fill><patternFill patternType="none"/></fill></fills>'
            '<borders count="1"><border/></borders>'
            '<cellStyleXfs count="1"><xf/></cellStyleXfs>'
            '<cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="2" applyNumberFormat="1"/></cellXfs></styleSheet>',
            "xl/worksheets/sheet1.xml": f'{HEAD}<worksheet xmlns="{MAIN}"><sheetData>{"".join(lines)}</sheetData>'
            "</worksheet>",
        },
    )


def _xlsx_cell(row: int, column: int, value: str | float) -> str:
    where = f'r="{chr(65 + column)}{row}"'
    if isinstance(value, str):
        return f'<c {where} t="inlineStr"><is><t>{escape(value)}</t></is></c>' if value else ""
    style = ' s="1"' if isinstance(value, float) else ""
    return f"<c {where}{style}><v>{value}</v></c>"


NAMES = {
    "office": "urn:oasis:names:tc:opendocument:xmlns:office:1.0",
    "table": "urn:oasis:names:tc:opendocument:xmlns:table:1.0",
    "text": "urn:oasis:names:tc:opendocument:xmlns:text:1.0",
}


def write_ods(path: Path, rows: Sequence[Row]) -> None:
    """Write an OpenDocument workbook with one sheet, ``offers``."""
    spaces = " ".join(f'xmlns:{name}="{space}"' for name, space in NAMES.items())
    lines = [f"<table:table-row>{''.join(_ods_cell(value) for value in row)}</table:table-row>" for row in rows]
    kind = "application/vnd.oasis.opendocument.spreadsheet"
    manifest = "urn:oasis:names:tc:opendocument:xmlns:manifest:1.0"
    pack(
        path,
        {
            "mimetype": kind,
            "META-INF/manifest.xml": f'{HEAD}<manifest:manifest xmlns:manifest="{manifest}" manifest:version="1.2">'
            f'<manifest:file-entry manifest:full-path="/" manifest:media-type="{kind}"/>'
            '<manifest:file-entry manifest:full-path="content.xml" manifest:media-type="text/xml"/>'
            "</manifest:manifest>",
            "content.xml": f'{HEAD}<office:document-content {spaces} office:version="1.2">'
            "<office:body><office:spreadsheet>"
            f'<table:table table:name="offers">{"".join(lines)}</table:table></office:spreadsheet></office:body>'
            "</office:document-content>",
        },
    )


def _ods_cell(value: str | float) -> str:
    if isinstance(value, str):
        text = f"<text:p>{escape(value)}</text:p>" if value else ""
        return f'<table:table-cell office:value-type="string">{text}</table:table-cell>'
    shown = f"{value:.2f}" if isinstance(value, float) else str(value)
    kind = f'office:value-type="float" office:value="{value}"'
    return f"<table:table-cell {kind}><text:p>{shown}</text:p></table:table-cell>"


def main() -> None:
    """Write both workbooks."""
    HERE.mkdir(parents=True, exist_ok=True)
    write_xlsx(HERE / "village-timber.xlsx", TIMBER_YARD)
    write_ods(HERE / "harbour-dock.ods", LUMBER_DOCK)


if __name__ == "__main__":
    main()
