"""Lets LibreOffice compute the formulas of ordinary-functions.json and writes its values beside them.

Run with Debian's Python, which has XlsxWriter: /usr/bin/python3 tests/check-values/make_ordinary_values.py
A formula that begins with { is entered as an array formula. LibreOffice is not needed to run the tests.
"""
import datetime
import json
import pathlib
import re
import subprocess
import tempfile
import xml.etree.ElementTree as tree

import xlsxwriter

HERE = pathlib.Path(__file__).parent
FILE = HERE / "ordinary-functions.json"
NAMESPACES = {
    "office": "urn:oasis:names:tc:opendocument:xmlns:office:1.0",
    "table": "urn:oasis:names:tc:opendocument:xmlns:table:1.0",
    "text": "urn:oasis:names:tc:opendocument:xmlns:text:1.0",
    "calcext": "urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0",
}


# LibreOffice trusts the values in a file from elsewhere unless told to calculate always (0).
RECALCULATE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""


def name(prefix, local):
    return "{%s}%s" % (NAMESPACES[prefix], local)


def write_workbook(path, data, formulas):
    book = xlsxwriter.Workbook(str(path), {"use_future_functions": True})
    sheet = book.add_worksheet("Data")
    for letter, values in data.items():
        for row, value in enumerate(values):
            cell = "%s%d" % (letter, row + 1)
            if isinstance(value, str) and value.startswith("="):
                sheet.write_formula(cell, value)
            elif isinstance(value, str):
                sheet.write_string(cell, value)
            elif value is not None:
                sheet.write(cell, value)
    for row, formula in enumerate(formulas):
        cell = "Z%d" % (row + 1)
        if formula.startswith("{"):
            sheet.write_array_formula("%s:%s" % (cell, cell), "{=%s}" % formula[1:])
        else:
            sheet.write_formula(cell, "=" + formula)
    book.close()


def read_value(cell):
    kind = cell.get(name("calcext", "value-type")) or cell.get(name("office", "value-type"))
    shown = "".join("".join(part.itertext()) for part in cell.findall("text:p", NAMESPACES))
    if kind == "error":
        return {"error": shown}
    if kind == "string":
        return shown
    if kind == "boolean":
        return cell.get(name("office", "boolean-value")) == "true"
    if kind == "time":
        hours, minutes, seconds = re.match(r"PT(\d+)H(\d+)M([\d.]+)S", cell.get(name("office", "time-value"))).groups()
        return (int(hours) * 3600 + int(minutes) * 60 + float(seconds)) / 86400
    if kind == "date":
        day = datetime.datetime.fromisoformat(cell.get(name("office", "date-value")))
        return (day - datetime.datetime(1899, 12, 30)).total_seconds() / 86400
    value = cell.get(name("office", "value"))
    # A formula whose result is an empty text has no value type.
    return "" if value is None else float(value)


def read_values(path, count):
    root = tree.parse(path).getroot()
    values = []
    for row in root.iter(name("table", "table-row")):
        column = 0
        found = None
        for cell in row:
            if column <= 25 < column + int(cell.get(name("table", "number-columns-repeated"), 1)):
                found = cell
            column += int(cell.get(name("table", "number-columns-repeated"), 1))
        repeated = int(row.get(name("table", "number-rows-repeated"), 1))
        for _ in range(min(repeated, count - len(values))):
            values.append(None if found is None else read_value(found))
    return values


def main():
    content = json.loads(FILE.read_text(encoding="utf-8"))
    formulas = [row[0] for row in content["rows"]]
    version = subprocess.run(["soffice", "--version"], capture_output=True, text=True, check=True).stdout.strip()
    with tempfile.TemporaryDirectory() as folder:
        book = pathlib.Path(folder) / "formulas.xlsx"
        write_workbook(book, content["data"], formulas)
        settings = pathlib.Path(folder) / "profile" / "user"
        settings.mkdir(parents=True)
        (settings / "registrymodifications.xcu").write_text(RECALCULATE, encoding="utf-8")
        subprocess.run(
            ["soffice", "-env:UserInstallation=file://%s/profile" % folder, "--headless", "--convert-to", "fods", "--outdir", folder, str(book)],
            check=True, capture_output=True,
        )
        values = read_values(book.with_suffix(".fods"), len(formulas))
    content["source"] = "%s, by soffice --headless --convert-to fods; locale en-US" % version
    content["rows"] = [[formula, value] for formula, value in zip(formulas, values)]
    lines = ",\n    ".join(json.dumps(row, ensure_ascii=False) for row in content["rows"])
    head = json.dumps({"source": content["source"], "data": content["data"]}, ensure_ascii=False, indent=2)
    FILE.write_text(head[:-2] + ',\n  "rows": [\n    ' + lines + "\n  ]\n}\n", encoding="utf-8")


main()
