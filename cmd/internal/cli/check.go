package cli

import (
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/patterns/problem"
)

var checkCommand = command{
	name:    "check",
	summary: "say whether a pattern file is sound, with all problems at once",
	usage:   "FILE [--json]",
	about: `Reads the file and plans the work without writing anything. Each problem is
shown with its file, line and column, the line itself, and what is allowed.
A figure that the mechanics of its bolt do not bear out (torque over yield, an
angle that breaks the bolt, an engagement that tears out) is warned of, too;
the file's figure stands all the same. Warnings do not make a file unsound.`,
	example: `
drawdown check p4-head
    p4-head is sound: 14 fasteners, 2 kinds, 5 stages to tighten, 4 to loosen
`,
	build: func(flags *pflag.FlagSet) runner {
		asJSON := jsonFlag(flags)
		return func(p *Program, args []string) Status {
			file, err := oneFile(args)
			if err != nil {
				return p.misuse("check", "%v", err)
			}
			return p.check(file, *asJSON)
		}
	},
}

func (p *Program) check(file string, asJSON bool) Status {
	made, problems, err := job.Load(file, p.Stdin, "", "")
	if err != nil {
		return p.unread(file, err)
	}
	status := Done
	if problems.Stops() {
		status = Wrong
	}
	if asJSON {
		out := struct {
			Sound    bool         `json:"sound"`
			Problems problem.List `json:"problems"`
		}{status == Done, append(problem.List{}, problems...)}
		return max(status, p.printJSON(out))
	}
	p.report(problems)
	if status == Done {
		verdict := "is sound"
		if len(problems) > 0 {
			verdict = "can be used; look at " + counted(len(problems), "warning")
		}
		fmt.Fprintf(p.Stdout, "%s %s: %s, %s, %s to tighten, %d to loosen\n", spoken(file), verdict,
			counted(len(made.Joint.Fasteners), "fastener"), counted(len(made.Kinds), "kind"),
			counted(len(made.Tighten.Stages), "stage"), len(made.Loosen.Stages))
	}
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
