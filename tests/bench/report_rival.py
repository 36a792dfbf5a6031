"""A like report set with ReportLab: the same words, sheet and letters, tables
and a chart drawn as lines. As it is used: platypus, streams compressed.

    python report_rival.py FOLDER FONT

FOLDER holds outline.tsv. For each line `NAME PASSES` on stdin it answers one
line: nanoseconds for all the passes, then the size of the PDF. It writes
rival.pdf first.
"""

import io
import sys
import time
from pathlib import Path
from xml.sax.saxutils import escape

from reportlab.graphics.shapes import Circle, Drawing, Line, PolyLine
from reportlab.lib import colors
from reportlab.lib.pagesizes import letter
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.platypus import Paragraph, SimpleDocTemplate, Table, TableStyle

folder = Path(sys.argv[1])
pdfmetrics.registerFont(TTFont("Report", sys.argv[2]))
LINES = [line.split("\t") for line in (folder / "outline.tsv").read_text("utf-8").splitlines()]


def style(size, **more):
    return ParagraphStyle("s", fontName="Report", fontSize=size, leading=size * 1.45, **more)


BODY, SMALL = style(10.5, spaceBefore=7), style(8)
CELL, HEAD, HERO = style(9), style(18, spaceBefore=20), style(28)
BULLET = style(10.5, leftIndent=20, bulletIndent=6, spaceBefore=3)
WIDTH = 446


def chart(points):
    drawing = Drawing(WIDTH, 150)
    places = [tuple(map(float, p.split(","))) for p in points.split()]
    places = [(40 + 390 * x, 20 + 120 * y) for x, y in places]
    drawing.add(Line(40, 20, 430, 20))
    for n in range(5):
        y = 20 + 30 * n
        drawing.add(Line(40, y, 430, y, strokeColor=colors.lightgrey, strokeWidth=0.5))
    if len(places) > 1:
        drawing.add(PolyLine([v for p in places for v in p], strokeWidth=1.5))
    for x, y in places:
        drawing.add(Circle(x, y, 2, fillColor=colors.teal, strokeWidth=0))
    return drawing


def table(rows):
    made = Table([[Paragraph(escape(c), CELL) for c in row] for row in rows], repeatRows=1)
    made.setStyle(TableStyle([("LINEBELOW", (0, 0), (-1, -1), 0.5, colors.lightgrey)]))
    return made


def make():
    out = io.BytesIO()
    story, rows, title, foot = [], [], "", ""
    for kind, *fields in LINES + [["."]]:
        if rows and kind not in "RF":
            story.append(table(rows))
            rows = []
        text = escape(" ".join(fields))
        if kind in "RF":
            rows.append(fields)
        elif kind == "T":
            title = fields[0]
            story.append(Paragraph(text, HERO))
        elif kind == "H":
            story.append(Paragraph(text, HEAD))
        elif kind == "L":
            story.append(Paragraph(text, BULLET, bulletText="•"))
        elif kind in "SK":
            story.append(Paragraph(text, SMALL))
        elif kind == "G":
            story += [Paragraph(escape(fields[0]), SMALL), chart(fields[1])]
        elif kind == "E":
            foot = fields[0]
        elif kind != ".":
            story.append(Paragraph(text, BODY))

    def footer(canvas, doc):
        canvas.setFont("Report", 8)
        canvas.drawString(112, 36, f"{foot} · page {doc.page}")

    template = SimpleDocTemplate(
        out, pagesize=letter, leftMargin=112, rightMargin=54, topMargin=54, bottomMargin=58,
        title=title, lang="en",
    )
    template.build(story, onFirstPage=footer, onLaterPages=footer)
    return out.getvalue()


pdf = make()
(folder / "rival.pdf").write_bytes(pdf)
print("ready", flush=True)
for line in sys.stdin:
    passes = int(line.split()[1])
    begun = time.perf_counter_ns()
    for _ in range(passes):
        make()
    print(time.perf_counter_ns() - begun, len(pdf), flush=True)
