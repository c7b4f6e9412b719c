package cli

const aboutTorque = `Works out what preload a bolt bears, which torque gives it and how widely that
scatters; backwards from a torque; on by an angle; and whether the thread it
sits in and the part under its head hold. With FILE it does so for every kind
of a pattern file; flags go before what the file says. Quantities carry their
unit: Nm, lbf.ft, lbf.in, kgf.m; kN, lbf; mm, in; deg.

The model
  Torque and preload, exact (the default), a screw with its lead angle:
    T = F (d2/2 tan(phi + rho) + Dkm/2 muK)
    tan phi = P/(pi d2), tan rho = muG/cos 30, Dkm = (face + hole)/2
  linear (ISO 16047, VDI 2230 Part 1), up to 1 % lower:
    T = F (P/2pi + 0.577 d2 muG + Dkm/2 muK)
  by nut factor (Shigley 9th ed., Eq. 8-27): T = K F d
  Aims. --yield: tension and torsion together use the share nu of the yield
  stress while the bolt is turned (VDI 2230 Part 1, section 5.4.3):
    F = nu Rp0.2 As / sqrt(1 + 3 (3/2 d2/dS tan(phi + rho))^2)
  --proof: a share of the proof load, As by the proof stress (ISO 898-1,
  SAE J429); --preload: a stated force.
  Stress area ISO 898-1 or ASME B1.1; strength by the least values of
  ISO 898-1, SAE J429, ISO 3506-1 and ASTM A193.
  Stiffness: VDI 2230 Part 1, section 5.1: head, shank, free and engaged
  thread; cones in the clamped parts. After --snug the preload rises along a
  straight line to yield, then bends off as the bolt hardens and stretches for
  good. Angles count from the snug torque. Settlement: VDI 2230, table 5.
  Stripping: VDI 2230, section 5.5.5, after Alexander. Bearing pressure:
  VDI 2230, step R10.

Low, nominal, high
  are the friction; nominal is the middle of its span. A torque gives the most
  preload at low friction. Aimed by --yield, the torque is the safe one: at no
  friction of the span is the share exceeded, and at nominal and high friction
  the bolt gets less than it bears. Aimed by --proof or --preload, the torque
  reaches the aim at nominal friction; low and high tell what it may become. A
  single figure of friction has no span, as the tables of VDI 2230 have none;
  no real joint keeps to it, so the least that a torque wrench may leave is
  told beside it (VDI 2230, table A8). In JSON the plain numbers are nominal;
  *_range_* gives the least, the nominal and the greatest value; at_friction
  gives all by friction.

Assumed where a flag is missing, and printed
  friction 0.08 to 0.24, from oiled to dry (VDI 2230, table A5); a lubricant
  stands for a class of that table. Head ISO 4014 or ASME B18.2.1 with its
  least bearing face; hole ISO 273 medium or ASME B18.2.8 normal; 90 % of
  yield. With --grip: steel, wide around the bolt, a bolt of standard length
  with a nut, or in a tapped hole with --into. The threads and the face under
  the head are judged at the greatest preload of the span.

What it cannot do
  Gaskets that creep, bending, prying and working loads, heat, prevailing
  torque of lock nuts, bolts that were stretched before, and the maker's
  knowledge. The maker's figure goes before every figure here.`
