package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/sequence"
	"drawdown/sequence/plan"
)

var orderCommand = command{
	name:    "order",
	summary: "print the sequence and the steps as text or JSON",
	usage:   "FILE [--way WAY] [--turn TURN] [--json]",
	about:   `Prints the tightening order, its exact reverse for loosening, and the stages.`,
	example: `
drawdown order p4-head
    Cylinder head · Fernhollow P4 pump engine
    ...
    Tighten
      main, spiral, turning left
        1:M3 2:M8 3:M9 4:M4 5:M2 6:M7 7:M10 8:M5 9:M1 10:M6
        seen as filled rows, 5 columns and 2 rows
      side, row
        11:F2 12:F3 13:F1 14:F4
        seen as a row
      stage 1  20 N·m (15 lbf·ft)  main
    ...
`,
	build: func(flags *pflag.FlagSet) runner {
		ways := addWayFlags(flags)
		asJSON := jsonFlag(flags)
		return func(p *Program, args []string) Status {
			file, err := oneFile(args)
			if err != nil {
				return p.misuse("order", "%v", err)
			}
			way, turn, err := ways.chosen()
			if err != nil {
				return p.misuse("order", "%v", err)
			}
			made, status, ok := p.load(file, way, turn)
			if !ok {
				return status
			}
			if *asJSON {
				return p.printJSON(orderJSON(made))
			}
			p.printOrder(made)
			return Done
		}
	},
}

func (p *Program) printOrder(made plan.Plan) {
	heading := made.Title
	if made.Machine != "" {
		heading += " · " + made.Machine
	}
	fmt.Fprintf(p.Stdout, "%s\ncard %s\n", heading, made.Fingerprint)
	if made.Asked != (plan.Asked{}) {
		fmt.Fprintf(p.Stdout, "order %s as asked for, not the file's own\n", made.Asked)
	}
	fmt.Fprint(p.Stdout, "\nTighten\n")
	first := 1
	for _, g := range made.Groups {
		fmt.Fprintf(p.Stdout, "  %s, %s\n", strings.Join(g.Kinds, ", "), wayWords(g))
		fmt.Fprintf(p.Stdout, "    %s\n", numbered(made, g.Members, first))
		if byLayout(g) {
			fmt.Fprintf(p.Stdout, "    seen as %s\n", familyWords(g.Seen))
		}
		first += len(g.Members)
	}
	p.printStages(made, made.Tighten)
	fmt.Fprintf(p.Stdout, "\nLoosen\n    %s\n", numbered(made, made.Loosen.Order, 1))
	p.printStages(made, made.Loosen)
	p.printSource(made)
}

// numbered writes ids behind the numbers that the card gives them.
func numbered(made plan.Plan, fasteners []int, first int) string {
	words := made.IDs(fasteners)
	for k := range words {
		words[k] = fmt.Sprintf("%d:%s", first+k, words[k])
	}
	return strings.Join(words, " ")
}

// byLayout says that the layout has a say in the order of a group.
func byLayout(g plan.Group) bool { return g.Way != sequence.List && g.Way != sequence.Cast }

// wayWords says how a group is gone through.
func wayWords(g plan.Group) string {
	switch g.Way {
	case sequence.List:
		return "the maker's own order"
	case sequence.Cast:
		return "by cast number"
	case sequence.RowWay:
		return "row"
	case sequence.Balanced:
		return "balanced from the middle outwards"
	}
	return fmt.Sprintf("%s, turning %s", g.Way, g.Turn)
}

func (p *Program) printStages(made plan.Plan, side plan.Side) {
	for i := range side.Stages {
		s := &side.Stages[i]
		line := fmt.Sprintf("  stage %d  %s", s.Number, stageWords(s))
		if len(s.Kinds) > 0 {
			line += "  " + strings.Join(s.Kinds, ", ")
		}
		if s.Way != "" {
			line += ": " + strings.Join(made.IDs(s.Fasteners), " ")
		}
		if s.Note != "" {
			line += "  (" + s.Note + ")"
		}
		fmt.Fprintln(p.Stdout, line)
	}
}

// stageWords gives the figure of a stage, marked where it was worked out.
func stageWords(s *plan.Stage) string {
	mark := ""
	if s.WorkedOut {
		mark = "≈ "
	}
	switch s.Do {
	case plan.Tighten:
		return fmt.Sprintf("%s%s (%s)%s", mark, s.Torque, s.Torque.Other(), share(s))
	case plan.Advance:
		return mark + "+" + s.Angle.String()
	case plan.BackOff:
		return "back off " + s.Angle.String()
	case plan.TurnBack:
		return "break loose " + s.Angle.String()
	case plan.Wait:
		return "wait " + s.Wait.String()
	}
	return "out"
}

// share says which part of the worked-out torque a stage takes.
func share(s *plan.Stage) string {
	if s.Percent == 0 {
		return ""
	}
	return fmt.Sprintf(", %g %% of the torque worked out", s.Percent)
}

func (p *Program) printSource(made plan.Plan) {
	if len(made.Tighten.Stages) == 0 {
		return // there are no figures to have a source
	}
	source := made.Source
	if source == "" {
		source = "no source stated, so they count as worked out (≈)"
	}
	fmt.Fprintf(p.Stdout, "\nFigures: %s. The maker's manual comes first.\n", source)
	if made.WorkedOut() && made.Source != "" {
		fmt.Fprintln(p.Stdout, "Figures marked ≈ were worked out.")
	}
	for _, a := range made.Assumptions {
		fmt.Fprintf(p.Stdout, "  ≈ %s\n", a)
	}
}
