package card

// The words of the card, in one place.
const (
	wordTighten = "TIGHTEN"
	wordLoosen  = "LOOSEN"

	wordStages       = "Stages"
	wordTick         = "Tick as you go"
	wordBefore       = "Before you start"
	wordOrder        = "order"
	wordWorkedOut    = "worked out"
	wordWorkedOutAll = "Figures marked ≈ were worked out: a figure from a manual goes before them."
	wordNoSource     = "Figures: no source stated, so they count as worked out (≈): a figure from a manual goes before them."
	wordNoFigures    = "The file gives no stages: this card shows the order only. Take the figures from the maker’s manual."
)

// trouble is the one box for when it goes wrong.
type trouble struct {
	title string
	steps []string
}

var troubleTighten = trouble{
	"If a bolt turns on without getting tighter",
	[]string{
		"Stop. Do not finish the stage.",
		"Slacken all in the loosening order.",
		"Look for a pulled thread, a stretched bolt, dirt.",
		"Write its tightening number here and tell the lead:",
	},
}

var troubleLoosen = trouble{
	"If a bolt will not turn, or may break",
	[]string{
		"Stop. Turn it back in a little.",
		"Soak it, wait, work it to and fro. Warm the part only where the manual allows it.",
		"If it snaps: leave the stub, go on in the order.",
		"Write its tightening number here and tell the lead:",
	},
}
