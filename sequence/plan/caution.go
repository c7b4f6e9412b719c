package plan

// Caution is what the file warns of, for both sides of the work or for one.
type Caution struct {
	Text string
	Side CautionSide
}

// CautionSide is the side of the work that a caution belongs to.
type CautionSide string

const (
	CautionBoth    CautionSide = ""
	CautionTighten CautionSide = "tighten"
	CautionLoosen  CautionSide = "loosen"
)

// CautionsFor gives the texts that a side shows: its own and those for both, in
// the order of the file. CautionBoth gives all of them.
func (p Plan) CautionsFor(side CautionSide) []string {
	var texts []string
	for _, c := range p.Cautions {
		if side == CautionBoth || c.Side == CautionBoth || c.Side == side {
			texts = append(texts, c.Text)
		}
	}
	return texts
}
