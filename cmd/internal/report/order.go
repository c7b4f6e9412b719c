package report

import (
	"fmt"
	"strings"

	"drawdown/geometry/family"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// Order prints the order of a plan and its stages, of one side or of both.
func (r Report) Order(made plan.Plan, side plan.CautionSide) {
	sheet := &r.Words.Sheet
	r.heading(made)
	fmt.Fprintf(r.To, sheet.Card+"\n", made.Fingerprint)
	if made.Asked != (plan.Asked{}) {
		asked := strings.TrimSpace(sheet.Ways[string(made.Asked.Way)] + " " + sheet.Turns[string(made.Asked.Turn)])
		fmt.Fprintf(r.To, sheet.Asked+"\n", asked)
	}
	if side != plan.CautionLoosen {
		r.tightening(made)
	}
	if side != plan.CautionTighten {
		r.loosening(made)
	}
	r.source(made)
}

func (r Report) tightening(made plan.Plan) {
	r.line("\n", OrderTighten, nil)
	numbers := made.Tighten.Numbers()
	for _, g := range made.Groups {
		r.group(g)
		fmt.Fprintf(r.To, "    %s\n", numbered(made, g.Members, numbers))
		if !g.Makers() {
			r.line("    ", SeenAs, seenAs(g.Seen))
		}
	}
	r.basis(made.Tighten)
	for i := range made.Tighten.Stages {
		r.stage(made, &made.Tighten.Stages[i])
	}
}

// loosening also prints the steps of each stage, since a stage may cover only
// some of the fasteners.
func (r Report) loosening(made plan.Plan) {
	r.line("\n", OrderLoosen, nil)
	numbers := made.Loosen.Numbers()
	fmt.Fprintf(r.To, "    %s\n", numbered(made, made.Loosen.Order, numbers))
	r.basis(made.Loosen)
	for i := range made.Loosen.Stages {
		s := &made.Loosen.Stages[i]
		r.stage(made, s)
		if len(s.Fasteners) > 0 {
			fmt.Fprintf(r.To, "    %s\n", numbered(made, s.Fasteners, numbers))
		}
	}
}

// basis prints the grounds of the order and rounds of a side.
func (r Report) basis(side plan.Side) {
	for _, f := range side.Basis {
		fmt.Fprintf(r.To, "  %s\n", r.Words.Say(f))
	}
}

// group prints the way of a group.
func (r Report) group(g plan.Group) {
	code, known := map[sequence.Way]finding.Code{sequence.List: GroupMakers, sequence.Cast: GroupCast, sequence.RowWay: GroupRow, sequence.Balanced: GroupBalanced}[g.Way]
	if !known {
		code = GroupTurning
	}
	r.line("  ", code, finding.Values{
		"kinds": g.Kinds, "way": r.Words.Sheet.Ways[string(g.Way)], "turn": r.Words.Sheet.Turns[string(g.Turn)],
	})
}

// numbered writes ids after their numbers on the card, and the names of
// clusters after fasteners that belong together.
func numbered(made plan.Plan, fasteners, numbers []int) string {
	cluster := made.ClusterNames()
	var words []string
	for k, i := range fasteners {
		words = append(words, fmt.Sprintf("%d:%s", numbers[i], made.Joint.Fasteners[i].ID))
		if last := k+1 == len(fasteners) || cluster[fasteners[k+1]] != cluster[i]; last && cluster[i] != "" {
			words = append(words, "("+cluster[i]+")")
		}
	}
	return strings.Join(words, " ")
}

func (r Report) stage(made plan.Plan, s *plan.Stage) {
	v := finding.Values{"n": s.Number, "does": Stage(r.Words, s), "kinds": s.Kinds, "note": s.Note}
	if s.Way != "" {
		v["ids"] = strings.Join(made.IDs(s.Fasteners), " ")
	}
	r.line("  ", StageLine, v)
}

// Stage returns the figure of a stage, marked if it was calculated.
func Stage(c *words.Catalogue, s *plan.Stage) string {
	code, v := StageOut, finding.Values{
		"workedout": s.WorkedOut, "release": s.Release, "turns": c.ByTurns(s.ByTurns), "until": c.Until(s.Until), "once": c.AtOnce(s.AtOnce),
	}
	switch s.Do {
	case plan.Tighten:
		code, v["torque"], v["other"], v["share"] = StageTorque, s.Torque, s.Other, s.Percent
	case plan.Advance:
		code, v["angle"] = StageAngle, s.Angle
	case plan.Lengthen:
		code, v["stretch"] = StageStretch, s.Stretch
	case plan.BackOff:
		code, v["angle"] = StageBackOff, s.Angle
	case plan.TurnBack:
		code, v["angle"] = StageTurnBack, s.Angle
	case plan.Wait:
		code, v["wait"] = StageWait, s.Wait
	}
	return c.Say(finding.Noted(code, v))
}

// source prints the source of the figures.
func (r Report) source(made plan.Plan) {
	if len(made.Tighten.Stages) == 0 {
		return // there are no figures
	}
	r.line("\n", FiguresFrom, finding.Values{"source": made.Source})
	if made.WorkedOut() && made.Source != "" {
		r.line("", WorkedOut, nil)
	}
	for _, a := range made.Assumptions {
		fmt.Fprintf(r.To, "  ≈ %s\n", r.Words.Say(a))
	}
}

// Sound reports that a file can be used, what it contains,
// and how many points could not be judged.
func (r Report) Sound(file string, made plan.Plan, warnings, open int) {
	if file == "-" {
		file = ""
	}
	r.line("", CheckSound, finding.Values{
		"file": file, "warnings": warnings, "open": open, "fasteners": len(made.Joint.Fasteners), "kinds": len(made.Kinds),
		"tighten": len(made.Tighten.Stages), "loosen": len(made.Loosen.Stages),
	})
}

// Judgement prints what could be judged about a file, and what not.
func (r Report) Judgement(j Judgement) {
	for _, note := range j.Notes {
		fmt.Fprint(r.To, Wrapped("", "  ", r.say(CheckNote, finding.Values{"what": note})))
	}
	if len(j.Judged) > 0 {
		fmt.Fprint(r.To, Wrapped("", "  ", r.say(CheckJudged, finding.Values{"what": j.Judged})))
	}
	if len(j.NotJudged) > 0 {
		r.line("", CheckNotJudged, nil)
		for _, line := range j.NotJudged {
			fmt.Fprint(r.To, Wrapped("  ", "    ", line))
		}
	}
}

// seenAs returns the values for the line about the recognized family.
func seenAs(s family.Seen) finding.Values {
	v := finding.Values{
		"family": string(s.Family), "named": s.Named, "edge": len(s.Edge), "corners": len(s.Corners), "inner": len(s.Inner),
		"parts": counts(s.Parts), "missing": s.Missing,
	}
	if s.Family == family.Grid {
		v["columns"], v["rows"] = s.Layout.Columns, s.Layout.Rows
	}
	if len(s.Rings) > 1 {
		v["rings"] = counts(s.Rings)
	}
	if s.OffMm >= 0.05 { // otherwise it is on the shape
		v["off"] = unit.Length(s.OffMm)
	}
	return v
}

func counts(lists [][]int) []int {
	var n []int
	for _, list := range lists {
		n = append(n, len(list))
	}
	return n
}
