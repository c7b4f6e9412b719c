"""Makes the drawings of this folder, by ezdxf 0.18.1 (a general-purpose
library for DXF that has nothing to do with drawdown):

    /usr/bin/python3 make.py

One part, a cover of 200 x 120 mm, in seven releases as text, in two as binary,
and once in inches. dxf_test.go says what has to be read from them.
"""

import math
import ezdxf
from ezdxf import units

CORNER = math.tan(math.radians(90 / 4))  # the bulge of a quarter circle


def polyline(msp, points, closed, layer):
    if msp.doc.dxfversion == "AC1009":
        msp.add_polyline2d([(x, y, b) for x, y, b in points], format="xyb", close=closed, dxfattribs={"layer": layer})
    else:
        msp.add_lwpolyline(points, format="xyb", close=closed, dxfattribs={"layer": layer})


def add_round_spline(msp, x, y, r):
    """A circle as a rational spline of nine control points."""
    w = math.sqrt(0.5)
    around = [(1, 0), (1, 1), (0, 1), (-1, 1), (-1, 0), (-1, -1), (0, -1), (1, -1), (1, 0)]
    msp.add_rational_spline([(x + r * u, y + r * v) for u, v in around], [1, w, 1, w, 1, w, 1, w, 1], degree=2,
                            knots=[0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4], dxfattribs={"layer": "HOLES"})


def make(version, unit=units.MM, mm=1.0):
    doc = ezdxf.new(version)
    doc.units = unit
    doc.header["$INSUNITS"] = unit
    for name in ["EDGE", "HOLES", "CENTRE"]:
        doc.layers.add(name)
    doc.layers.add("OLD").freeze()
    doc.layers.add("NOTES").off()
    doc.layers.add("Höhe")
    s = 1 / mm
    bolt = doc.blocks.new("BOLT", base_point=(5 * s, 5 * s))
    bolt.add_circle((5 * s, 5 * s), 4.5 * s)
    bolt.add_circle((5 * s, 5 * s), 7.5 * s)  # the counterbore
    one = doc.blocks.new("ONE")
    one.add_circle((1, 0), 1)
    nested = doc.blocks.new("NESTED")
    nested.add_blockref("ONE", (0, 0), dxfattribs={"xscale": 4.5 * s, "yscale": 4.5 * s})

    msp = doc.modelspace()
    polyline(msp, [(x * s, y * s, b) for x, y, b in [
        (-80, -60, 0), (80, -60, CORNER), (100, -40, 0), (100, 40, CORNER),
        (80, 60, 0), (-80, 60, CORNER), (-100, 40, 0), (-100, -40, CORNER)]], True, "EDGE")
    for x in (-80, 80):
        for y in (-40, 40):
            msp.add_circle((x * s, y * s), 4.5 * s, dxfattribs={"layer": "HOLES"})
    msp.add_blockref("BOLT", (0, 40 * s), dxfattribs={"layer": "HOLES", "rotation": 30})
    msp.add_blockref("BOLT", (0, -40 * s), dxfattribs={"layer": "HOLES", "xscale": -1})
    msp.add_blockref("ONE", (40 * s, 40 * s), dxfattribs={"layer": "HOLES", "xscale": 4.5 * s, "yscale": 4.5 * s, "rotation": 90})
    msp.add_blockref("NESTED", (-40 * s, 40 * s), dxfattribs={"layer": "HOLES", "xscale": -1})
    msp.add_circle((40 * s, -40 * s), 4.5 * s, dxfattribs={"layer": "HOLES", "extrusion": (0, 0, -1)})
    msp.add_arc((80 * s, 0), 4.5 * s, 0, 180, dxfattribs={"layer": "HOLES"})
    msp.add_arc((80 * s, 0), 4.5 * s, 180, 360, dxfattribs={"layer": "HOLES"})
    polyline(msp, [(-84.5 * s, 0, 1), (-75.5 * s, 0, 1)], True, "HOLES")
    msp.add_circle((0, 0), 30 * s, dxfattribs={"layer": "HOLES"})
    msp.add_point((0, 52 * s), dxfattribs={"layer": "HOLES"})
    msp.add_line((55 * s, 5 * s), (65 * s, 5 * s), dxfattribs={"layer": "EDGE"})
    msp.add_arc((65 * s, 0), 5 * s, 270, 90, dxfattribs={"layer": "EDGE"})
    msp.add_line((55 * s, -5 * s), (65 * s, -5 * s), dxfattribs={"layer": "EDGE"})
    msp.add_arc((55 * s, 0), 5 * s, 90, 270, dxfattribs={"layer": "EDGE"})
    if version != "R12":
        msp.add_ellipse((-55 * s, 0), (0, 10 * s), 0.5, dxfattribs={"layer": "EDGE"})
        msp.add_mtext("Deckel", dxfattribs={"layer": "NOTES"})
        add_round_spline(msp, 40 * s, -10 * s, 4.5 * s)
        msp.add_spline([(0, 0), (s, s), (2 * s, 0)], dxfattribs={"layer": "EDGE"})
    msp.add_line((-110 * s, 0), (110 * s, 0), dxfattribs={"layer": "CENTRE"})
    msp.add_circle((20 * s, 20 * s), 4.5 * s, dxfattribs={"layer": "OLD"})
    msp.add_circle((20 * s, 25 * s), 4.5 * s, dxfattribs={"layer": "NOTES"})
    msp.add_text("Höhe 12", dxfattribs={"layer": "Höhe", "insert": (0, -20 * s), "height": 3 * s})
    msp.add_linear_dim(base=(0, -80 * s), p1=(-100 * s, -60 * s), p2=(100 * s, -60 * s)).render()
    doc.layout().add_circle((0, 0), 4.5 * s)
    return doc


for version in ["R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"]:
    make(version).saveas(f"cover-{version}.dxf")
for version in ["R12", "R2010"]:
    make(version).saveas(f"cover-{version}-binary.dxf", fmt="bin")
make("R2000", units.IN, 25.4).saveas("cover-inches.dxf")
