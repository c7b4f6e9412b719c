package cli

import (
	"cmp"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/machine"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/render"
	"drawdown/sequence/interaction"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/limits"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

var predictCommand = command{
	name:    "predict",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		addPredictFlags(flags)
		printing := flag.AddPrint(flags, render.PDF)
		frames := flags.Bool("frames", false, "draw a page for every step of the work")
		ways := addWayFlags(flags)
		return func(p *Program, args []string) Status {
			file, err := oneFile(args)
			onPaper := *frames || flags.Changed("format")
			sheets, errPrinting := printing.ChosenFor(onPaper, flag.ForSheets, "", "format", "paper", "landscape", "dpi", "out")
			if err := cmp.Or(err, errPrinting); err != nil {
				return p.misuse(err)
			}
			q := newQuantities(flags)
			ask := q.predictRequest()
			if q.Err != nil {
				return p.refuse(q.Err)
			}
			made, warnings, status := p.load(file, *ways.way, *ways.turn)
			if status != Done {
				return status
			}
			done := machine.Waiting(p.Stderr)
			answer, err := interaction.Predict(made, ask)
			done()
			if err != nil {
				return p.fail(Wrong, p.predictProblem(err))
			}
			if onPaper {
				return p.draw(made, sheets, printing, forecastOf(answer, *frames))
			}
			told := report.Prediction{Answer: answer, Report: p.reportTo(p.Stdout)}
			if *printing.AsJSON {
				out, err := told.JSON(p.said(warnings), ask.Search)
				if err != nil {
					return p.fail(Wrong, err)
				}
				return p.printJSON(out)
			}
			told.Print(ask.Search)
			return Done
		}
	},
}

func addPredictFlags(flags *pflag.FlagSet) {
	addTexts(flags, []textFlag{
		{"passes", "`percents` of the target, one per pass over all bolts; rising, or equal for a repeat, such as 30,70,100,100"},
		{"stages", "--passes as `shares`, such as 0.3,0.7,1"},
		{"target", "`force` that is 100 % on every bolt, such as 30kN"},
		{"cap", "greatest `share` of the target for --compensate, such as 120% (default 110%)"},
		{"gasket", "`kind` of gasket: " + flag.Choices(gasketWords())},
		{"gasket-stiffness", "`stiffness` per area of gasket, such as \"120 MPa/mm\" or \"50-250 MPa/mm\""},
		{"gasket-width", "`width` of a gasket along the edge, such as 16mm"},
		{"gasket-ring", "inner and outer `diameters` of a raised face, such as 150mm-190mm"},
		{"flange-outer", "outer `diameter` of a round flange, such as 515mm"},
		{"flange-bore", "`bore` of the flange, such as 300mm"},
		{"pipe-wall", "wall `thickness` of the pipe or hub on the flange, such as 12mm"},
		{"pipe-radius", "`radius` to the middle of the pipe wall, such as 160mm"},
		{"foundation", "`stiffness` of gasket and counterpart together"},
		{"material", "`material` of the part that bends, such as aluminium"},
		{"thickness", "`thickness` of the part that bends, such as 60mm"},
		{"under", "`material` of the counterpart"},
		{"under-thickness", "`thickness` of the counterpart, if it bends too"},
		{"bolt-flexibility", "`flexibility` of a bolt and its clamped parts, such as \"4.2e-6 mm/N\""},
	})
	flag.Offer(flags, "gasket", gasketWords()...)
	flags.Bool("compensate", false, "with --passes: calculate last-pass targets that make up for the loss, up to --cap")
	flags.Bool("compare", false, "compare other ways with the file's own, and search better orders")
	flags.String("scatter", "", "add this many random `draws` of friction, such as 1000")
	flags.String("seed", "", "`number` that selects the draws; the same number gives the same draws (default 1)")
	flags.String("stick", "", "`share` of load that a bolt may lack before the wrench turns it, such as 5%")
	flags.Bool("preview", false, "use a plate without edges: rough, may be low by a factor of 2")
}

func (q *quantities) predictRequest() interaction.Question {
	q.AtMostOne("passes", "stages")
	q.AtMostOne("compensate", "compare")
	q.AtMostOne("foundation", "gasket-stiffness", "gasket")
	q.AtMostOne("foundation", "under")
	q.AtMostOne("preview", "gasket-ring", "gasket-width")
	q.AtMostOne("preview", "flange-outer")
	q.AtMostOne("preview", "pipe-wall")
	if q.Flags.Changed("target") && !q.Flags.Changed("stages") {
		q.Needs("target", "passes", "30,70,100")
	}
	compensate, _ := q.Flags.GetBool("compensate")
	if compensate && !q.Flags.Changed("stages") {
		q.Needs("compensate", "passes", "30,70,100")
	}
	if q.Flags.Changed("cap") && !compensate {
		q.Fail(flag.Misused(flag.NeedsOther, finding.Values{"flag": "cap", "other": "compensate"}))
	}
	var ask interaction.Question
	ask.Shares = q.shares()
	ask.Target = flag.Within(q, "target", unit.Sensible.Force, unit.ParseForce)
	if compensate {
		ask.Cap = limits.UsualCap
	}
	flag.Over(q, "cap", flag.ParseCap, &ask.Cap)
	ask.Gasket, _ = flag.Read(q, "gasket", compliance.ParseGasket)
	ask.Stiffness, _ = flag.Read(q, "gasket-stiffness", flag.ParseStiffness)
	ask.Foundation, _ = flag.Read(q, "foundation", flag.ParseStiffness)
	ask.Strip = flag.Within(q, "gasket-width", unit.Sensible.Strip, flag.WithUnit)
	ask.Flange = q.flange()
	ask.Material, _ = q.Text("material")
	ask.Counterpart, _ = q.Text("under")
	ask.Thickness = flag.Within(q, "thickness", unit.Sensible.Thickness, flag.WithUnit)
	ask.CounterpartThickness = flag.Within(q, "under-thickness", unit.Sensible.Thickness, flag.WithUnit)
	ask.Own = flag.Within(q, "bolt-flexibility", unit.Sensible.Giving, flag.ParseFlexibility)
	q.Needs("seed", "scatter", "1000")
	ask.Draws, _ = flag.Read(q, "scatter", flag.ParseDraws)
	ask.Seed = 1
	flag.Over(q, "seed", flag.ParseSeed, &ask.Seed)
	ask.Stick, _ = flag.Read(q, "stick", flag.ParseStick)
	ask.Search, _ = q.Flags.GetBool("compare")
	ask.Preview, _ = q.Flags.GetBool("preview")
	return ask
}

// flange reads the dimensions of a round flange; nil if none is stated.
func (q *quantities) flange() *compliance.Flange {
	f, set := flag.Read(q, "gasket-ring", flag.ParseRing)
	for _, measure := range []struct {
		flag   string
		limits unit.Limits
		to     *unit.Length
	}{
		{"flange-outer", unit.Sensible.Bore, &f.Outer}, {"flange-bore", unit.Sensible.Bore, &f.Bore},
		{"pipe-wall", unit.Sensible.Thickness, &f.PipeWall}, {"pipe-radius", unit.Sensible.Bore, &f.PipeRadius},
	} {
		if q.Flags.Changed(measure.flag) {
			*measure.to, set = flag.Within(q, measure.flag, measure.limits, flag.WithUnit), true
		}
	}
	q.Needs("pipe-wall", "pipe-radius", "160mm")
	q.Needs("pipe-radius", "pipe-wall", "12mm")
	if !set {
		return nil
	}
	return &f
}

// shares reads the passes from either of their flags. Decreasing passes are
// rejected: a wrench set lower would click at once.
func (q *quantities) shares() []float64 {
	said, whole := finding.Values{"flag": "--stages", "unit": "", "example": "0.3,0.7,1,1"}, 1.0
	shares, set := flag.Read(q, "stages", flag.ParseShares)
	if !set {
		said, whole = finding.Values{"flag": "--passes", "unit": " %", "example": "30,70,100,100"}, 100
		shares, _ = flag.Read(q, "passes", flag.ParsePercents)
	}
	for k := 1; k < len(shares); k++ {
		if shares[k] < shares[k-1] {
			said["from"], said["to"] = whole*shares[k-1], whole*shares[k]
			q.Fail(flag.Misused(flag.PassesFall, said))
			break
		}
	}
	return shares
}

// gasketWords lists the gaskets without blanks, so that a shell takes each as
// one word.
func gasketWords() []string {
	all := flag.Texts(compliance.Gaskets())
	for i := range all {
		all[i] = strings.ReplaceAll(all[i], " ", "-")
	}
	return all
}

// predictProblem adds the flag that states what a joint lacks.
func (p *Program) predictProblem(err error) error {
	for _, hint := range predictHints {
		if errors.Is(err, hint.code) {
			return fmt.Errorf("%w (%s)", err, p.words.Say(finding.Noted(flag.StatedHere, finding.Values{"flags": hint.flags})))
		}
	}
	return err
}

// predictHints are the flags for what a joint may lack.
var predictHints = []struct {
	code  finding.Code
	flags string
}{
	{setup.ThicknessUnknown, "--thickness 12mm"},
	{setup.FlexibilityUnknown, `--bolt-flexibility "4.2e-6 mm/N"`},
	{prediction.NothingTightens, "--passes 30,70,100 --target 30kN"},
	{interaction.TargetUnknown, "--target 30kN"},
	{interaction.TorqueEndsNot, "--passes 30,70,100"},
	{interaction.TargetAboveYield, "--target 30kN"},
}

// forecastOf draws a prediction, or a page per step.
func forecastOf(answer interaction.Answer, frames bool) drawing {
	return func(_ plan.Plan, ask job.Printing) ([]render.File, []string, error) {
		drawn, notes, err := job.ForecastSheets(answer, ask, frames)
		if answer.Scatter != nil {
			notes = append(notes, ask.Words.Say(finding.Noted(report.PredictSheetsNot, nil)))
		}
		return drawn, notes, err
	}
}
