package cli

import (
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/patterns/problem"
	"drawdown/sequence/judge"
)

var checkCommand = command{
	name:    "check",
	summary: "say whether a pattern file, or an order, is sound",
	usage:   "FILE [--order LIST [--side SIDE]] [--draw [--actual-size]]",
	about: `Reads the file and plans the work without writing anything. Each problem is
shown with its file, line and column, the line itself, and what is allowed.
A figure that the mechanics of its bolt do not bear out (torque over yield, an
angle that breaks the bolt, an engagement that tears out) is warned of, too;
the file's figure stands all the same. Warnings do not make a file unsound.

--order judges an order by the rules of the trade: every fastener once, begun
in the middle, outwards from there, no long run on one side, neighbours not in
succession where it can be helped, a bolt circle crosswise, large fasteners
before small ones, the fasteners of a cluster together. LIST is ids with commas
between, or the numbers cast on the part; "cast" stands for those in their
order, "file" for the file's own order. A loosening order is judged as the
exact reverse.

What a layout allows is what the trade's own orders for it come to: row for a
row, star for one bolt circle, spiral and cross for all else. Slightly more is
a remark, much more departs from the rule. The pull to one side counts fasteners
at the edge that nothing tight holds against: in the first third of the steps it
tips the part, later the middle holds. An order that is not whole, or departs,
ends with status 1. A maker's own order (a list in the
file, or cast numbers) is described, never called wrong; a source vouches for
the figures of a file, not for its order.
The rules are common practice; the maker's order comes first.

--draw draws a sound file plainly, with its ids and a table of its places, to be
held against the part. With --actual-size every hole is a cross-hair at its true
size and place, over as many sheets as that takes: print at 100 % and measure
both bars.`,
	example: `
drawdown check p4-head
    p4-head is sound: 14 fasteners, 2 kinds, 5 stages to tighten, 4 to loosen
drawdown check p4-manifold --order E2,E7,E3,E6,E1,E8,E4,E5
    Exhaust manifold · Fernhollow P4 pump engine
    This order to tighten is sound.
    ...
drawdown check p4-head --draw
    p4-head is sound: 14 fasteners, 2 kinds, 5 stages to tighten, 4 to loosen
    out/p4-head-check.pdf
`,
	build: func(flags *pflag.FlagSet) runner {
		order := flags.String("order", "", "judge this order: a `list` of ids or cast numbers, or cast, or file")
		flag.Offer(flags, "order", job.CastOrder, job.FilesOrder)
		side := flag.Choice(flags, "side", judge.Tighten, judge.Sides, "the `side` that the order is for: ")
		drawing := addDrawFlags(flags)
		return func(p *Program, args []string) Status {
			file, err := oneFile(args)
			if err != nil {
				return p.misuse("check", "%v", err)
			}
			ask, err := drawing.chosen()
			switch {
			case err != nil:
				return p.misuse("check", "%v", err)
			case flags.Changed("order") && *drawing.draw:
				return p.misuse("check", "--order and --draw are two checks; ask for one at a time")
			case flags.Changed("order"):
				return p.checkOrder(file, *order, *side, *drawing.AsJSON)
			case flags.Changed("side"):
				return p.misuse("check", "--side says what an order is for; add it, as in --order M3,M8,M9")
			}
			return p.check(file, drawing, ask)
		}
	},
}

// checked is what a check says in JSON.
type checked struct {
	Sound    bool         `json:"sound"`
	Problems problem.List `json:"problems"`
	Files    []string     `json:"files,omitempty"`    // of the drawing
	Warnings []string     `json:"warnings,omitempty"` // of the drawing
}

func (p *Program) check(file string, drawing drawFlags, ask job.Printing) Status {
	made, problems, err := job.Load(file, p.Stdin, "", "")
	if err != nil {
		return p.unread(file, err)
	}
	out, status := checked{Sound: !problems.Stops(), Problems: p.said(problems)}, Done
	if !*drawing.AsJSON {
		p.report(problems)
	}
	switch {
	case !out.Sound:
		status = Wrong
	case *drawing.draw:
		if out.Files, out.Warnings, status = p.drawCheck(made, drawing, ask); status != Done {
			return status
		}
	}
	if *drawing.AsJSON {
		return max(status, p.printJSON(out))
	}
	if status == Done {
		verdict := "is sound"
		if len(problems) > 0 {
			verdict = "can be used; look at " + counted(len(problems), "warning")
		}
		fmt.Fprintf(p.Stdout, "%s %s: %s, %s, %s to tighten, %d to loosen\n", spoken(file), verdict,
			counted(len(made.Joint.Fasteners), "fastener"), counted(len(made.Kinds), "kind"),
			counted(len(made.Tighten.Stages), "stage"), len(made.Loosen.Stages))
	}
	p.printPaths(out.Files)
	return status
}

// spoken names a pattern as a sentence does.
func spoken(file string) string {
	if file == "-" {
		return "standard input"
	}
	return file
}

// counted writes a count with its noun: 1 kind, 2 kinds.
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
