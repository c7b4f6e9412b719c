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
  linear (ISO 16047, VDI 2230 Part 1), up to 1 % lower to a friction of 0.24:
    T = F (P/2pi + 0.577 d2 muG + Dkm/2 muK)
  by nut factor (Shigley 9th ed., Eq. 8-27): T = K F d
  Aims. --yield: tension and torsion together use the share nu of the yield
  stress while the bolt is turned (VDI 2230 Part 1, section 5.4.3):
    F = nu Rp0.2 As / sqrt(1 + 3 (3/2 d2/dS tan(phi + rho))^2)
  --proof: a share of the proof load, As by the proof stress (ISO 898-1,
  SAE J429); --preload: a stated force.
  Stress area ISO 898-1 or ASME B1.1; strength by the least values of
  ISO 898-1, SAE J429, ISO 3506-1 and ASTM A193. The last two have no proof
  load: it is taken as 85 % of Rp0.2.
  Stiffness: VDI 2230 Part 1, section 5.1: head, shank, free and engaged
  thread; cones in the clamped parts. Their half angle phi, printed with the
  D'A used, is, with a nut or in a tapped hole:
    tan phi = 0.362 + 0.032 ln(lK/2dW) + 0.153 ln(D'A/dW)
    tan phi = 0.348 + 0.013 ln(lK/dW) + 0.193 ln(D'A/dW)
  D'A counts up to 3 dW, which stands for wide parts. A working load acts under
  head and nut (n = 1): the bolt takes kB/(kB + kP) of it.
  After --snug the preload rises along a straight line to yield; past it each
  stretch of the bolt hardens, tension and torsion together, by
    s = Re + (Rm - Re)(1 - (1 - e/eu)^2)
  with the plastic strain e up to eu = A/2, half the elongation after fracture.
  From there one place draws in by 1.25 d A/2 more, the load falls by 15 %, and
  the bolt breaks. Rm is 1.1 Re where it is not known. Angles count from the
  snug torque; those to the greatest preload and to breaking are rounded down
  to 5 deg. A torque past yield is on the same curve: the preload grows with
  it until the bolt bears Rm; a torque beyond that is refused.
  Settlement: VDI 2230, table 5. Bearing pressure: VDI 2230, step R10.
  Stripping: VDI 2230, section 5.5.5, after Alexander, with the least d and d2
  of 6g or 2A, and the greatest D1 and D2 of 6H or 2B. Of the engagement m the
  length meff = m - 0.8 P carries, in what is judged and in what is needed:
    bolt FS = C1 C2 tB pi D1 meff/P (P/2 + (d2 - D1) tan 30)
    part FM = C1 C3 tM pi d meff/P (P/2 + (d - D2) tan 30)
  tB/Rm = 0.70 for class 4.6 and 5.6, 0.65 for 8.8, 0.62 for 10.9, 0.80, 0.72
  and 0.68 for stainless 50, 70 and 80, 0.60 for all others; tM by the material.
  C1 = 1 for a part wide around the thread (3.8 s/d - (s/d)^2 - 2.61 below
  s = 1.9 d). With R = tM d (P/2 + ...) / tB D1 (P/2 + ...), part over bolt:
    C2 = 0.897, above R = 1 (to 2.2)
         5.594 - 13.682 R + 14.107 R^2 - 6.057 R^3 + 0.9353 R^4
    C3 = 0.897, below R = 1 (from 0.4)
         0.728 + 1.769 R - 2.896 R^2 + 1.296 R^3

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
  stands for a class of that table. Hexagon head ISO 4014 (4017 has the same),
  with fine pitch ISO 8765, or ASME B18.2.1, without a washer; --head socket is
  ISO 4762, flange is ISO 4162 (small series); each with its least bearing
  face. --washer normal is ISO 7089: the head turns on it, and it spreads the
  load by 1.6 of its height (VDI 2230, section 5.5.4) and lies on top of --grip.
  Hole ISO 273 medium or ASME B18.2.8 normal; 90 % of yield. With --grip: steel,
  wide around the bolt, a bolt of standard length with a nut, or in a tapped
  hole with --into, of whose engagement 0.8 P does not carry. The threads and
  the face under the head are judged at the greatest preload of the span.

What it cannot do
  Gaskets that creep, bending, prying and working loads, heat, prevailing
  torque of lock nuts, bolts that were stretched before, and the maker's
  knowledge. The maker's figure goes before every figure here.`
