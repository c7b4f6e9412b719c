package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/report"
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
      side, row
        11:F2 12:F3 13:F1 14:F4
      stage 1  20 N·m (15 lbf·ft)  main
    ...
`,
	build: func(flags *pflag.FlagSet) runner {
		ways := addWayFlags(flags)
		flag.Language(flags)
		asJSON := flag.JSON(flags)
		return func(p *Program, args []string) Status {
			file, err := oneFile(args)
			if err != nil {
				return p.misuse("order", "%v", err)
			}
			made, status, ok := p.load(file, *ways.way, *ways.turn)
			if !ok {
				return status
			}
			if *asJSON {
				return p.printJSON(report.OrderJSON(made))
			}
			p.reportTo(p.Stdout).Order(made)
			return Done
		}
	},
}
