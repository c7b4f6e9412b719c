"""Draws the text dump of a scene with matplotlib, for comparing speed.

usage: matplotlib_card.py SCENE OUT.pdf
"""
import re
import shlex
import sys

import matplotlib

matplotlib.use("pdf")
from matplotlib.backends.backend_pdf import PdfPages
from matplotlib.figure import Figure
from matplotlib.patches import PathPatch
from matplotlib.path import Path

INKS = {"black": "#111111", "grey": "#4a4a4a", "accent": "#0f3f8c", "shade": "#dcdcd8", "tint": "#f1f1ee", "white": "#ffffff"}
POINTS_PER_MM = 72 / 25.4
CODES = {"M": [Path.MOVETO], "L": [Path.LINETO], "C": [Path.CURVE4] * 3, "Z": [Path.CLOSEPOLY]}


def shape(axes, words):
    fill = INKS.get(words[1].split("=")[1])
    stroke, width = words[2].split("=")[1].split("/")
    vertices, codes = [], []
    for word in words[3:]:
        if word in CODES:
            codes += CODES[word]
            if word == "Z":
                vertices.append((0, 0))
        elif re.fullmatch(r"-?[\d.]+,-?[\d.]+", word):
            vertices.append(tuple(map(float, word.split(","))))
    axes.add_patch(PathPatch(Path(vertices, codes), facecolor=fill or "none", edgecolor=INKS.get(stroke, "none"), linewidth=float(width) * POINTS_PER_MM))


def text(axes, line):
    words = shlex.split(line)
    x, y = map(float, words[1].split(","))
    size = float(words[2].split("=")[1])
    anchor = "center" if "middle" in words else "right" if "end" in words else "left"
    axes.text(x, y, words[-1], fontsize=size * POINTS_PER_MM, ha=anchor, va="baseline",
              weight="bold" if "bold" in words else "normal", rotation=90 if "upward" in words else 0,
              color=INKS[next(w for w in words if w in INKS)])


def main(scene, out):
    with PdfPages(out) as pages, open(scene, encoding="utf-8") as lines:
        figure = None
        for line in lines:
            words = line.split()
            if words[0] == "page":
                if figure:
                    pages.savefig(figure)
                width, height = map(float, words[2].split("×"))
                figure = Figure(figsize=(width / 25.4, height / 25.4))
                axes = figure.add_axes([0, 0, 1, 1])
                axes.set_xlim(0, width)
                axes.set_ylim(height, 0)
                axes.axis("off")
            elif words[0] == "shape":
                shape(axes, words)
            elif words[0] == "text":
                text(axes, line)
        pages.savefig(figure)


main(sys.argv[1], sys.argv[2])
