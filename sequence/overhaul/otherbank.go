package overhaul

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// called is what a step is about: the title of its joint, or its part.
func (t Task) called() string {
	if t.Joint != nil {
		return t.Joint.Title
	}
	return t.Part
}

// ofOtherBank finds what is new, or left to the manual, and is named after the other
// bank than the step.
func (t Task) ofOtherBank() *finding.Finding {
	side := sideOf(tokens(t.called()))
	if side == "" {
		return nil
	}
	for _, what := range slices.Concat(t.Gaskets, t.New, t.Manual, t.Figures) {
		if of := sideOf(tokens(what)); of != "" && of != side {
			return warned(OfOtherBank, finding.Values{"what": what, "step": t.called()})
		}
	}
	return nil
}

// otherBank returns the joint of an earlier step that has the same title but for the side.
func (o Overhaul) otherBank(task int) *plan.Plan {
	this := o.Tasks[task].Joint
	if this == nil || sideOf(tokens(this.Title)) == "" {
		return nil
	}
	for _, t := range o.Tasks[:task] {
		if t.Joint != nil && withoutSide(t.Joint.Title) == withoutSide(this.Title) && sideOf(tokens(t.Joint.Title)) != sideOf(tokens(this.Title)) {
			return t.Joint
		}
	}
	return nil
}

var cylinderLabel = regexp.MustCompile(`(?i)^(?:cyl|zyl|cil)\pL*\.?\s*\d{1,3}$`)

// banksShare finds two banks with the same numbers of cylinders.
func (o Overhaul) banksShare(task int) *finding.Finding {
	other := o.otherBank(task)
	if other == nil {
		return nil
	}
	var shared []string
	for _, b := range o.Tasks[task].Joint.Joint.Bores {
		if cylinderLabel.MatchString(b.Label) && slices.ContainsFunc(other.Joint.Bores, func(of geometry.Bore) bool { return of.Label == b.Label }) {
			shared = append(shared, b.Label)
		}
	}
	if len(shared) == 0 {
		return nil
	}
	return warned(BanksShare, finding.Values{"title": o.Tasks[task].Joint.Title, "other": other.Title, "labels": shared})
}

// notMirrored finds a bank whose places are those of the other bank, where another joint
// of the same side is mirrored.
func (o Overhaul) notMirrored(task int) *finding.Finding {
	this, other := o.Tasks[task].Joint, o.otherBank(task)
	if other == nil || this.Mirrored != other.Mirrored || !slices.Equal(this.Joint.Points(), other.Joint.Points()) || this.Joint.Front != other.Joint.Front {
		return nil
	}
	for i, t := range o.Tasks {
		if of := o.otherBank(i); of != nil && t.Joint.Mirrored != of.Mirrored && sideOf(tokens(t.Joint.Title)) == sideOf(tokens(this.Title)) {
			return warned(NotMirrored, finding.Values{"title": this.Title, "other": other.Title, "mirrored": t.Joint.Title})
		}
	}
	return nil
}

var figures = regexp.MustCompile(`\d+(?:[.,]\d+)?`)

// figureApart finds a figure of a part that is many times that of the same part of the
// other bank, in the same text.
func (o Overhaul) figureApart(task int) *finding.Finding {
	const times = 5
	this := o.Tasks[task]
	if this.Part == "" || sideOf(tokens(this.Part)) == "" {
		return nil
	}
	for _, t := range o.Tasks[:task] {
		if t.Part == "" || withoutSide(t.Part) != withoutSide(this.Part) || sideOf(tokens(t.Part)) == sideOf(tokens(this.Part)) {
			continue
		}
		for _, texts := range [][2]string{{this.Loosen, t.Loosen}, {this.Tighten, t.Tighten}} {
			a, b := figures.FindAllString(texts[0], -1), figures.FindAllString(texts[1], -1)
			if len(a) != len(b) || figures.ReplaceAllString(texts[0], "") != figures.ReplaceAllString(texts[1], "") {
				continue
			}
			for i := range a {
				x, y := figure(a[i]), figure(b[i])
				if x > 0 && y > 0 && max(x/y, y/x) >= times {
					return warned(FigureApart, finding.Values{"text": texts[0], "other": texts[1]})
				}
			}
		}
	}
	return nil
}

func figure(written string) float64 {
	v, _ := strconv.ParseFloat(strings.Replace(written, ",", ".", 1), 64) // of digits
	return v
}

var (
	drains = []string{"drain", "drained", "ablassen", "abgelassen", "vidanger", "vidangé", "vidangée", "vaciar", "vaciado"}
	oils   = []string{"oil", "öl", "huile", "aceite"}
	sumps  = []string{"sump", "ölwanne", "carter", "cárter"}
)

// drainedLate finds oil that is drained after the sump has come off.
func (o Overhaul) drainedLate(task int) *finding.Finding {
	note := o.Tasks[task]
	said := tokens(note.Note)
	if note.Side == plan.CautionTighten || !hasAny(said, drains) || !hasAny(said, oils) {
		return nil
	}
	for _, t := range o.Tasks[:task] {
		if hasAny(tokens(t.called()), sumps) {
			return warned(DrainedLate, finding.Values{"text": note.Note, "title": t.called()})
		}
	}
	return nil
}
