"""Tells what ezdxf reads in a drawing, for a test."""

import sys
import ezdxf
from ezdxf.lldxf.encoding import decode_dxf_unicode

sys.stdout.reconfigure(encoding="utf-8")
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
print(doc.dxfversion, "unit", doc.header.get("$INSUNITS"), "complaints", len(audit.errors) + len(audit.fixes))
for e in sorted(doc.modelspace(), key=lambda e: e.dxftype()):
    kind, layer = e.dxftype(), e.dxf.layer
    assert layer in doc.layers, layer
    if kind == "CIRCLE":
        print(kind, layer, e.dxf.center.x, e.dxf.center.y, 2 * e.dxf.radius)
    elif kind == "POINT":
        print(kind, layer, e.dxf.location.x, e.dxf.location.y)
    elif kind == "POLYLINE":
        print(kind, layer, "closed" if e.is_closed else "open", *[(v.dxf.location.x, v.dxf.location.y) for v in e.vertices])
    elif kind == "TEXT":
        print(kind, layer, decode_dxf_unicode(e.dxf.text), e.dxf.align_point.x, e.dxf.align_point.y)
    else:
        print(kind, layer)
