package cli

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/spf13/pflag"
	"pgregory.net/rapid"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/sequence/figures"
)

// facts are the facts of one bolt, as stated in a file and by flags.
type facts struct {
	kind, stages []string // in the file
	part         string
	flags        []string
}

func (f *facts) state(key, flag, value string) {
	f.kind = append(f.kind, key+": \""+value+"\"")
	f.flags = append(f.flags, "--"+flag, value)
}

func drawFacts(t *rapid.T) facts {
	var f facts
	one := func(name string, of ...string) string { return rapid.SampledFrom(of).Draw(t, name) }
	size := rapid.SampledFrom([]int{6, 8, 10, 12}).Draw(t, "size")
	mm := func(name string, from, to float64) string {
		return fmt.Sprintf("%.1f mm", rapid.Float64Range(from, to).Draw(t, name)*float64(size))
	}
	f.state("thread", "thread", fmt.Sprint("M", size))
	f.state("class", "class", one("class", "5.6", "8.8", "10.9", "12.9", "A2-70", "830 MPa"))
	switch one("friction", "none", "lubricant", "one", "span") {
	case "lubricant":
		f.state("lubricant", "lubricant", one("lubricant", "engine oil", "dry", "moly", "anti-seize"))
	case "one":
		mu := one("mu", "0.08", "0.12", "0.15", "0.2")
		f.kind, f.flags = append(f.kind, "friction: "+mu), append(f.flags, "--friction", mu)
	case "span":
		f.kind, f.flags = append(f.kind, "friction: [0.1, 0.16]"), append(f.flags, "--friction", "0.1-0.16")
	}
	if rapid.Bool().Draw(t, "into") {
		f.state("into", "into", one("material", "aluminium", "cast iron", "steel", "stainless steel"))
		if rapid.Bool().Draw(t, "engaged") {
			f.state("engagement", "engagement", mm("engagement", 0.6, 3))
		}
	}
	if rapid.Bool().Draw(t, "hole") {
		f.state("hole", "hole", mm("hole", 1.05, 1.5))
	}
	if reuse := one("reuse", "", "once", "inspect", "yes"); reuse != "" {
		f.state("reuse", "reuse", reuse)
	}
	torque := fmt.Sprintf("%.3g N·m", rapid.Float64Range(0.0001, 0.15).Draw(t, "torque")*float64(size*size*size))
	gripped := rapid.Bool().Draw(t, "gripped")
	if gripped {
		f.grip(t, mm, one)
	}
	f.stages = []string{"torque: " + torque}
	if angle := fmt.Sprint(rapid.IntRange(10, 400).Draw(t, "angle"), "°"); gripped && rapid.Bool().Draw(t, "turned") {
		f.stages = append(f.stages, "angle: "+angle)
		f.flags = append(f.flags, "--snug", torque, "--angle", angle)
	} else {
		f.flags = append(f.flags, "--torque", torque)
	}
	return f
}

// grip states the clamped parts and the length of the bolt.
func (f *facts) grip(t *rapid.T, mm func(string, float64, float64) string, one func(string, ...string) string) {
	grip := mm("grip", 1, 12)
	f.part = one("part", "", "cast aluminium", "steel", "cast iron")
	f.kind = append(f.kind, "grip: "+grip)
	f.flags = append(f.flags, "--grip", strings.TrimSpace(f.part+" "+grip))
	if rapid.Bool().Draw(t, "long") {
		f.state("length", "length", mm("length", 12.5, 16))
		if rapid.Bool().Draw(t, "threaded") {
			f.state("thread length", "thread-length", one("thread length", "full", mm("thread", 1, 12)))
		}
	}
}

func (f facts) file() string {
	text := "drawdown: 1\ntitle: Lid\nkinds: {main: {" + strings.Join(f.kind, ", ") + "}}\n" +
		"fasteners: [{row: {count: 4, pitch: 200, from: [7, 3], kind: main, id: C}}]\n" +
		"tighten: {stages: [{" + strings.Join(f.stages, "}, {") + "}], source: a manual}\n"
	if f.part != "" {
		text += "joint: {part: {material: " + f.part + "}}\n"
	}
	return text
}

// beside are findings that a question gives about its joint, and about the
// calculated torque.
var beside = []finding.Code{figures.SettlesMuch, figures.StiffnessLeftOut, figures.AtWorkedOut}

// verdicts returns codes with their severities.
func verdicts(found []finding.Finding) []string {
	var list []string
	for _, f := range found {
		if !slices.Contains(beside, f.Code) {
			list = append(list, fmt.Sprint(f.Severity, " ", f.Code))
		}
	}
	slices.Sort(list)
	return list
}

// First principles: the same facts give the same verdict, whether a file or the
// flags of torque state them, and whether the file is planned (check, card,
// order, predict, book) or used by torque. What the flags reject gives a
// warning in a file.
func TestFlagsAndFilesAreJudgedAlike(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(rt *rapid.T) {
		f := drawFacts(rt)
		made, problems, err := job.Load("-", strings.NewReader(f.file()), "", "")
		if err != nil || problems.Stops() {
			rt.Fatalf("%v, %v:\n%s", err, problems, f.file())
		}
		flags := pflag.NewFlagSet("torque", pflag.ContinueOnError)
		addTorqueFlags(flags)
		if err := flags.Parse(f.flags); err != nil {
			rt.Fatal(err)
		}
		q, ask := newQuantities(flags), figures.Ask{}
		q.override(&ask)
		if q.Err != nil {
			rt.Fatalf("%v: %q", q.Err, f.flags)
		}
		inFile := verdicts(made.Figures)
		_, kinds, _, err := job.Kinds("-", strings.NewReader(f.file()))
		if err != nil {
			rt.Fatal(err)
		}
		if asked, err := figures.WorkOut(kinds[0]); err != nil {
			refused(rt, err, inFile, f)
		} else if diff := cmp.Diff(inFile, verdicts(asked.Notes)); diff != "" {
			rt.Errorf("(- planned, + asked) %s\n%s", diff, f.file())
		}
		answer, err := figures.WorkOut(ask)
		if err != nil {
			refused(rt, err, inFile, f)
			return
		}
		if diff := cmp.Diff(inFile, verdicts(answer.Notes)); diff != "" {
			rt.Errorf("(- file, + flags) %s\n%s\n%q", diff, f.file(), f.flags)
		}
	})
}

// refused checks that the file has a warning for what a question rejects.
func refused(t *rapid.T, err error, inFile []string, f facts) {
	if !slices.ContainsFunc(inFile, func(v string) bool { return strings.HasPrefix(v, "warning ") }) {
		t.Errorf("refused: %v; the file has %q:\n%s", err, inFile, f.file())
	}
}
