package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
)

var conditionCommand = command{
	name:    "condition",
	summary: "draw the sheet to note the state of every fastener on",
	usage:   "FILE [-o FOLDER] [flags]",
	about: `A row for every fastener in the order of loosening: came out, seized, stretched,
thread damaged, broken, replaced, its length as measured, and a remark. A small
drawing shows where each is; fasteners that are used once are marked. Two boxes
say what to do when one starts to give on the way out, or breaks.`,
	example: `
drawdown condition p4-head --format pdf -o bench
    bench/p4-head-condition.pdf
`,
	build: buildCondition,
}

func buildCondition(flags *pflag.FlagSet) runner {
	ways := addWayFlags(flags)
	printing := addPrintFlags(flags, "pdf,png")
	return func(p *Program, args []string) Status {
		ask, err := printing.chosen()
		if err != nil {
			return p.misuse("condition", "%v", err)
		}
		way, turn, err := ways.chosen()
		if err != nil {
			return p.misuse("condition", "%v", err)
		}
		file, err := oneFile(args)
		if err != nil {
			return p.misuse("condition", "%v", err)
		}
		made, status, ok := p.loadPlaces(file, way, turn)
		if !ok {
			return status
		}
		keepSmall(len(made.Joint.Fasteners), ask.DPI)
		files, notes, err := job.Condition(made, ask)
		if err != nil {
			return p.fail(Wrong, err)
		}
		return p.deliver(files, notes, printing)
	}
}
