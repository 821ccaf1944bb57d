"""Draws the placed items of `bulk.rs` with ReportLab and segno; prints "seconds bytes"."""

import io
import json
import statistics
import sys
import time

import segno
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen import canvas


def draw_qr(page, item):
    """The square code as dark runs, row by row, white border of 4 modules."""
    x, y, _, height = item["at"]
    module = item["module"]
    matrix = segno.make(item["qr"], error="m", boost_error=False, micro=False).matrix
    for row, cells in enumerate(matrix):
        start = None
        for column, dark in enumerate([*cells, 0]):
            if dark and start is None:
                start = column
            elif not dark and start is not None:
                page.rect(
                    (x + (4 + start) * module) * mm,
                    (y + height - (5 + row) * module) * mm,
                    (column - start) * module * mm,
                    module * mm,
                    stroke=0,
                    fill=1,
                )
                start = None


def draw(labels, fonts):
    for weight, file in (("regular", "Regular"), ("bold", "Bold")):
        name = f"{fonts}/AtkinsonHyperlegibleNext-{file}.ttf"
        pdfmetrics.registerFont(TTFont(weight, name))
    out = io.BytesIO()
    page = canvas.Canvas(out, pageCompression=1)
    for label in labels:
        page.setPageSize((label["width"] * mm, label["height"] * mm))
        for item in label["items"]:
            if "text" in item:
                page.setFont(item["weight"], item["size"] * mm)
                page.drawString(item["x"] * mm, item["y"] * mm, item["text"])
            elif "qr" in item:
                draw_qr(page, item)
            else:
                for x, y, w, h in item["dark"]:
                    page.rect(x * mm, y * mm, w * mm, h * mm, stroke=0, fill=1)
        page.showPage()
    page.save()
    return out.getvalue()


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        labels = json.load(file)
    times = []
    for _ in range(3):
        start = time.perf_counter()
        pdf = draw(labels, sys.argv[2])
        times.append(time.perf_counter() - start)
    print(statistics.median(times), len(pdf))


main()
