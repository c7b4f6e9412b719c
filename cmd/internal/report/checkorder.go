package report

import (
	"fmt"
	"reflect"
	"slices"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"drawdown/render/words"
	"drawdown/sequence/figures"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

// Checked is the output of check --json.
type Checked struct {
	Sound    bool         `json:"sound"` // the file, and the order if one is judged
	Problems problem.List `json:"problems"`
	Judgement
	Order    *judgedOrder `json:"order,omitempty"`
	Files    []string     `json:"files,omitempty"`    // of the drawing
	Warnings []string     `json:"warnings,omitempty"` // of the drawing
}

// Judgement is what a check could judge about a file, what it could not or only
// leniently, and notes besides the problems.
type Judgement struct {
	Judged    []string `json:"judged"`
	NotJudged []string `json:"not_judged"`
	Notes     []string `json:"notes,omitempty"`
}

// JudgementOf reports what could be judged about a plan.
func JudgementOf(c *words.Catalogue, made plan.Plan) Judgement {
	judged, open := made.Covered()
	var notes []finding.Finding
	for _, f := range ofEqualKinds(made.Figures) {
		known := f.Code == figures.TurnUsedOnce && made.Kind(f.At.Kind).Reuse == plan.ReuseOnce
		if f.Severity == finding.Note && !known && f.Code != figures.LubricantOpen { // what is open is reported with what could not be judged
			notes = append(notes, finding.Noted(CheckNoteAt, finding.Values{"file": f.At.File, "line": f.At.Line, "what": figures.Placed(f)}))
		}
	}
	return Judgement{Judged: Listed(c.SayAll(judged)), NotJudged: Listed(c.SayAll(open)), Notes: c.SayAll(notes)}
}

// ofEqualKinds merges findings that are the same for several kinds at one stage
// into one with all of them.
func ofEqualKinds(list []finding.Finding) (once []finding.Finding) {
	for _, f := range list {
		same := slices.IndexFunc(once, func(o finding.Finding) bool {
			return o.Code == f.Code && o.Severity == f.Severity && o.At.Stage == f.At.Stage && f.At.Stage > 0 && reflect.DeepEqual(o.Values, f.Values)
		})
		if same < 0 {
			once = append(once, f)
			continue
		}
		once[same].At.Kind += ", " + f.At.Kind
	}
	return once
}

type judgedOrder struct {
	judge.Report
	Findings []judgedFinding `json:"findings"` // including their words
}

type judgedFinding struct {
	judge.Finding
	Code finding.Code `json:"code"`
	Why  string       `json:"why"`
}

// CheckedJSON returns a judged order as data; the problems are in words.
func CheckedJSON(c *words.Catalogue, report judge.Report, problems problem.List) Checked {
	judged := &judgedOrder{Report: report, Findings: []judgedFinding{}}
	for _, f := range report.Findings {
		found := f.Found()
		judged.Findings = append(judged.Findings, judgedFinding{f, found.Code, c.Say(found)})
	}
	return Checked{Sound: report.Verdict.Right(), Problems: problems, Order: judged, Judgement: Judgement{Judged: []string{}, NotJudged: []string{}}}
}

// GradedJSON returns the answers of a class as data, with the names of the
// files written.
func GradedJSON(c *words.Catalogue, graded []job.Graded, files []string) object {
	answers := []object{}
	for _, g := range graded {
		findings := []object{}
		for _, f := range g.ToMend() {
			findings = append(findings, object{
				{"rule", string(f.Rule)}, {"severity", string(f.Severity)}, {"ids", Listed(f.IDs)}, {"steps", Listed(f.Steps)}, {"why", c.Say(f.Found())},
			})
		}
		answers = append(answers, object{
			{"student", g.Answer.Student},
			{"sheet", g.Answer.Sheet}, // 0 if the row does not state it
			{"line", g.Line},          // in the table
			{"right", g.Report.Verdict.Right()},
			{"verdict", string(g.Outcome)},
			{"unread", given(c.Value(g.Answer.Unread, ""))}, // why the row is not graded
			{"findings", findings},
		})
	}
	return object{{"answers", answers}, {"files", files}}
}

var verdicts = map[judge.Verdict]finding.Code{
	judge.Sound: OrderSound, judge.Remarks: OrderRemarks, judge.Departs: OrderDeparts, judge.NotWhole: OrderNotWhole, judge.Described: OrderMakers,
}

var severities = map[judge.Severity]finding.Code{
	judge.Fault: Fault, judge.Departure: Departs, judge.Remark: Remark, judge.Description: Note,
}

// JudgedOrder prints the result of judging an order.
func (r Report) JudgedOrder(made plan.Plan, report judge.Report) {
	r.heading(made)
	r.line("", OrderIs, finding.Values{"side": string(report.Side), "verdict": finding.Noted(verdicts[report.Verdict], nil)})
	for _, f := range report.Findings {
		why := r.Words.Say(f.Found())
		if len(report.Groups) > 1 && len(f.Kinds) > 0 {
			why = fmt.Sprintf(r.Words.Sheet.Named, r.Words.Value(f.Kinds, ","), why)
		}
		fmt.Fprintf(r.To, "  %-9s %s\n", r.say(severities[f.Severity], nil), why)
	}
	if report.Verdict == judge.NotWhole {
		return
	}
	r.figures(report)
	fmt.Fprint(r.To, "\n"+Wrapped("", "", r.say(HowToReadPull, nil)))
	if report.Verdict != judge.Described {
		r.line("\n", ByPractice, nil)
	}
}

// orderFigures are the columns of the table: the quantity, this order,
// drawdown's own, and a remark.
var orderFigures = Columns{-42, 11, 15, -40}

func (r Report) figures(report judge.Report) {
	fmt.Fprintln(r.To)
	orderFigures.Row(r.To, "", r.say(ThisOrder, nil), r.say(OwnOrder, nil))
	for _, g := range report.Groups {
		r.line("", GroupLies, finding.Values{"kinds": g.Kinds, "layout": string(g.Layout)})
		most := ""
		if g.Order.PullStep > 0 {
			most = " " + r.say(PullMostAt, finding.Values{"step": g.Order.PullStep})
		}
		r.measured(PullEarly, ".1", g.Order.PullEarly, g.Own.PullEarly, "")
		r.measured(PullMost, ".1", g.Order.Pull, g.Own.Pull, most)
		r.measured(LongestRun, "", g.Order.Run, g.Own.Run, "")
		if g.Layout != judge.Circle { // a circle has no inside
			r.measured(StepsInwards, "", g.Order.Inwards, g.Own.Inwards, "")
		}
		r.measured(ToNeighbours, "", g.Order.Neighbours, g.Own.Neighbours, "")
	}
	r.measured(WrenchWay, ".0 mm", report.TravelMm, report.OwnTravelMm, "")
}

// measured prints a figure of this order and that of drawdown's own.
func (r Report) measured(code finding.Code, form string, order, own any, remark string) {
	orderFigures.Row(r.To, "  "+r.say(code, nil), r.Words.Value(order, form), r.Words.Value(own, form), remark)
}
