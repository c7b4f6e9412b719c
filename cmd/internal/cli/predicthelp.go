package cli

const aboutPredict = `Tells what each bolt is left with after every pass: as one is tightened the part
bends, the gasket gives, and bolts tightened before it lose load or gain it.
Without --passes the stages of FILE are worked as they stand.

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

Low, nominal, high
  are the gasket's stiffness, from soft to stiff, which is known within a factor
  of two to three; the loss goes with its inverse. Read the band, never the
  middle alone. 100 % is the preload that the last torque gives at the middle of
  its friction; after an angle it is the mean of the kind.

What comes of it
  The order hardly changes the mean loss; it spreads it over the bolts, and
  keeps the part level on the way. A repeat at the full figure takes out more
  than any order does. Classes, by the lowest bolt at the soft end: from 95 %
  negligible, from 85 % noticeable, below strong (engineering judgement).
  --compensate works out targets for the last pass that end even, up to a cap;
  use them with measured stretch only.

What it cannot do
  Creep and hardening of gaskets, embedding, parts that are not flat, yield,
  heat, friction that changes from pass to pass: all listed with the output. No
  measured joint has been compared. Which bolts end low, the class and the
  number of passes can be trusted; the percentage of one bolt less. The maker's
  sequence and figures go before all of it.`

// predictLimits are what the model leaves out, for every output.
var predictLimits = []string{
	"gaskets that harden, stay compressed or creep (5 to 20 % with time on soft gaskets, engineering estimate)",
	"embedding, parts that are not flat, bolts beyond yield, heat, shear in thick parts, friction between the parts",
	"torque scatter, and friction that changes from pass to pass: it adds about 10 % SD with a lubricant, 20 % dry (engineering estimates)",
	"measured joints: none has been compared; on soft gaskets and raised faces take another 5 to 10 points",
}
