package cli

import (
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/limits"
)

var predictCommand = command{
	name: "predict",
	build: func(flags *pflag.FlagSet) runner {
		addPredictFlags(flags)
		sheets := addForecastFlags(flags)
		ways := addWayFlags(flags)
		return func(p *Program, args []string) Status {
			file, err := oneFile(args)
			if err != nil {
				return p.misuse("predict", "%v", err)
			}
			printing, err := sheets.ChosenFor(sheets.wanted(), "is for sheets; say which with --format pdf, png or svg")
			if err != nil {
				return p.misuse("predict", "%v", err)
			}
			q := &quantities{flags: flags}
			ask := q.predictRequest()
			if q.err != nil {
				return p.refuse("predict", q.err)
			}
			made, warnings, status, ok := p.loadWarned("", file, *ways.way, *ways.turn)
			if !ok {
				return status
			}
			answer, err := interaction.Predict(made, ask)
			if err != nil {
				return p.fail(Wrong, p.predictProblem(err))
			}
			if sheets.wanted() {
				return p.forecast(answer, printing, sheets)
			}
			report := predictReport{Answer: answer, to: p.Stdout, c: p.words}
			if *sheets.AsJSON {
				return p.printJSON(report.json(p.said(warnings), ask.Search))
			}
			report.print(ask.Search)
			return Done
		}
	},
}

func addPredictFlags(flags *pflag.FlagSet) {
	for _, f := range []struct{ name, usage string }{
		{"passes", "`percents` of the target, one a pass over all, rising, or equal for a repeat, such as 30,70,100,100"},
		{"stages", "the same as `shares`, such as 0.3,0.7,1"},
		{"target", "`force` that is 100 % on every bolt, such as 30kN"},
		{"cap", "most `share` of the target for --compensate, 110% without, such as 120%"},
		{"gasket", "`kind`: " + choices(gasketWords())},
		{"gasket-stiffness", "`stiffness` of its area, such as \"120 MPa/mm\" or \"50-250 MPa/mm\""},
		{"gasket-width", "`width` of a gasket along the edge, such as 16mm"},
		{"gasket-ring", "inner and outer `diameters` of a raised face, such as 150mm-190mm"},
		{"flange-outer", "outer `diameter` of a round flange, such as 515mm"},
		{"flange-bore", "its `bore`, such as 300mm"},
		{"pipe-wall", "`thickness` of the pipe or hub behind it, such as 12mm"},
		{"pipe-radius", "`radius` to the middle of that wall, such as 160mm"},
		{"foundation", "`stiffness` of gasket and counterpart together"},
		{"material", "`material` of the part that bends, such as aluminium"},
		{"thickness", "`thickness` of it that bends, such as 60mm"},
		{"under", "`material` that it lies on"},
		{"under-thickness", "`thickness` of that, where it bends too"},
		{"bolt-flexibility", "`flexibility` of a bolt and its members, such as \"4.2e-6 mm/N\""},
	} {
		flags.String(f.name, "", f.usage)
	}
	flag.Offer(flags, "gasket", gasketWords()...)
	flags.Bool("compensate", false, "with --passes: work out last-pass targets against the loss, up to --cap")
	flags.Bool("compare", false, "lay other ways beside the file's own, and search better orders")
	flags.String("scatter", "", "`draws` of friction on top, such as 1000: what comes of both")
	flags.String("seed", "", "`number` that the draws come from, 1 without; the same gives the same")
	flags.String("stick", "", "`share` that a bolt may lack before the wrench turns it, such as 5%")
	flags.Bool("preview", false, "an endless plate: rough, may be low by a factor of 2")
}

// predictRequest reads what the flags state.
func (q *quantities) predictRequest() interaction.Question {
	q.atMostOne("passes", "stages")
	q.atMostOne("compensate", "compare")
	q.atMostOne("foundation", "gasket-stiffness", "gasket")
	q.atMostOne("foundation", "under")
	q.atMostOne("preview", "gasket-ring", "gasket-width")
	q.atMostOne("preview", "flange-outer")
	q.atMostOne("preview", "pipe-wall")
	if q.flags.Changed("target") && !q.flags.Changed("stages") {
		q.needs("target", "passes", "30,70,100")
	}
	compensate := q.flags.Lookup("compensate").Value.String() == "true"
	if compensate && !q.flags.Changed("stages") {
		q.needs("compensate", "passes", "30,70,100")
	}
	if q.flags.Changed("cap") && !compensate {
		q.fail(misuse("--cap needs --compensate"))
	}
	var ask interaction.Question
	ask.Shares = q.shares()
	ask.Target = above(q, "target", unit.ParseForce)
	if limit, set := read(q, "cap", parseCap); set {
		ask.Cap = limit
	} else if compensate {
		ask.Cap = limits.UsualCap
	}
	ask.Gasket, _ = read(q, "gasket", compliance.ParseGasket)
	ask.Stiffness, _ = read(q, "gasket-stiffness", parseStiffness)
	ask.Foundation, _ = read(q, "foundation", parseStiffness)
	ask.Strip = above(q, "gasket-width", withUnit)
	ask.Flange = q.flange()
	ask.Material, _ = q.text("material")
	ask.Counterpart, _ = q.text("under")
	ask.Thickness = above(q, "thickness", withUnit)
	ask.CounterpartThickness = above(q, "under-thickness", withUnit)
	ask.Own = above(q, "bolt-flexibility", parseFlexibility)
	q.needs("seed", "scatter", "1000")
	ask.Draws, _ = read(q, "scatter", parseDraws)
	ask.Seed = 1
	if seed, set := read(q, "seed", parseSeed); set {
		ask.Seed = seed
	}
	ask.Stick, _ = read(q, "stick", parseStick)
	ask.Search = q.flags.Lookup("compare").Value.String() == "true"
	ask.Preview = q.flags.Lookup("preview").Value.String() == "true"
	return ask
}

// flange reads the measures of a round flange; nil where none is stated.
func (q *quantities) flange() *compliance.Flange {
	f, set := read(q, "gasket-ring", parseRing)
	for _, measure := range []struct {
		flag string
		to   *unit.Length
	}{{"flange-outer", &f.Outer}, {"flange-bore", &f.Bore}, {"pipe-wall", &f.PipeWall}, {"pipe-radius", &f.PipeRadius}} {
		if q.flags.Changed(measure.flag) {
			*measure.to, set = above(q, measure.flag, withUnit), true
		}
	}
	q.needs("pipe-wall", "pipe-radius", "160mm")
	q.needs("pipe-radius", "pipe-wall", "12mm")
	if !set {
		return nil
	}
	return &f
}

// shares reads the passes from either of their flags.
func (q *quantities) shares() []float64 {
	if shares, set := read(q, "stages", parseShares); set {
		return q.rising(shares, finding.Values{"flag": "--stages", "unit": "", "example": "0.3,0.7,1,1"}, 1)
	}
	percents, _ := read(q, "passes", parsePercents)
	return q.rising(percents, finding.Values{"flag": "--passes", "unit": " %", "example": "30,70,100,100"}, 100)
}

// rising refuses passes that fall: such a wrench clicks at once.
func (q *quantities) rising(shares []float64, said finding.Values, unit float64) []float64 {
	for k := 1; k < len(shares); k++ {
		if shares[k] < shares[k-1] {
			said["from"], said["to"] = unit*shares[k-1], unit*shares[k]
			q.fail(misuse("%w", finding.Failed(PassesFall, said)))
			break
		}
	}
	return shares
}

// gasketWords lists the gaskets without blanks, so that a shell takes each as
// one word.
func gasketWords() []string {
	all := texts(compliance.Gaskets())
	for i := range all {
		all[i] = strings.ReplaceAll(all[i], " ", "-")
	}
	return all
}
