package cli

const aboutPredict = `Tells what each bolt is left with after every pass: as one is tightened the part
bends, the gasket gives, and bolts tightened before it lose load or gain it.
Without --passes the stages of FILE are worked as they stand. A flag goes before
what the file states under joint, the file before what is assumed; all that is
assumed is listed.

In the file
  joint:
    part: {material: aluminium, thickness: 60 mm}      # that bends
    counterpart: {material: cast iron}     # thickness too, where it bends
    gasket: {kind: composite}              # of the list of --gasket, or paper
    row: {bending: 2.0e8 N·mm², foundation: 900 N/mm², length: 380 mm,
          start: 15 mm}
    bolt flexibility: 4.2e-6 mm/N          # bolt and parts under its head
  A gasket may have {stiffness: 50-250 MPa/mm, strip: 16 mm} instead, or what a
  data sheet says, {squeezed: 7-17 %, at: 34.5 MPa, thickness: 1.5 mm}. On a
  round flange there stands in place of row
    flange: {outer: 515 mm, bore: 300 mm, face: raised, gasket inner: 330 mm,
             gasket outer: 370 mm, pipe wall: 12 mm, pipe radius: 160 mm,
             pair: yes}
  Any of it may be left out.

The model
  Each nut closes its bolt and the parts: own F + C F = travel, F >= 0, and
  bolts can go slack. C is what part and gasket give way at each bolt for a
  newton at each other: a plate by finite elements with the outline, bores and
  gasket of the file (Bogner, Fox and Schmit 1965); a beam with free ends for a
  row (Hetenyi 1946); a ring for a round flange; a beam each for separate caps.
  They lie on springs: the gasket in series with the counterpart (Timoshenko
  and Woinowsky-Krieger, Theory of Plates and Shells, art. 57 and 61). own is
  what the bolt gives way and the parts pressed under its head (VDI 2230
  Part 1, section 5.1). In one pass all bolts end at F = L^-T T with
  own + C = L d L^T (after Bibel and Ezell 1992). Titles are given from memory.

Low–nominal–high
  is what a figure can be as gasket and seat go from soft to stiff. The gasket
  is known within a factor of two to three; the loss goes with its inverse. Read
  the band, never the middle alone. Low is not always the soft end: bolts of a
  stiff cover gain. Bare faces, a liquid sealant and an O-ring in its groove
  come to the same: the faces meet, and the parts alone give way.
  What 100 % is stands under the table: the preload of the last torque at the
  middle of its friction; where an angle ends the work, the mean of the kind,
  or, with --passes, at most its yield load; with --target, the force stated.

What comes of it
  The order hardly changes the mean loss; it spreads it over the bolts, and
  keeps the part level on the way. A repeat at the full figure takes out more
  than any order does. Classes, by the lowest bolt at the worst: from 95 %
  negligible, from 85 % noticeable, below strong (engineering judgement).
  --compensate works out targets for the last pass that end even, up to --cap,
  110 % of the target without, and never above 90 % of the yield stress; use
  them with measured stretch only.

Other ways
  --compare lays the file's own work beside other orders, a snug pass, one more
  pass and a recipe (snug, centre out, the last torque twice round), and
  searches orders for least scatter, least tilt, and both. Beside each stands
  what the trade's rules say of its order, never of its stages: sound, remarks,
  departs. An order that departs is never the one to ask for, unless the file
  has it. The maker's sequence stands first and is never changed. --scatter 1000
  does the work a thousand times, each bolt with a friction of its own that
  stays over the passes; the same seed gives the same figures.

With --json
  fraction is null for a pass by angle, which sets no share of the target (mean
  tells what it leaves), and where each bolt has a target of its own.
  one_more_pass and repeats_needed are null where the last pass is no torque
  over all bolts; repeats_needed also where fifty are not enough. rules is of
  the order of a way alone, never of its stages.

On paper
  --format pdf,png,svg draws the part with the least share that each bolt keeps
  and a chart of every pass; --frames a page for every step of the work.

What it cannot do
  Creep and hardening of gaskets, embedding, parts that are not flat, yield,
  heat, friction that changes from pass to pass: all listed with the output. No
  measured joint has been compared. Which bolts end low, the class and the
  number of passes can be trusted; the percentage of one bolt less. The maker's
  sequence and figures go before all of it.`
