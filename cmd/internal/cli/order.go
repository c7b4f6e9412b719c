package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/report"
)

var orderCommand = command{
	name:    "order",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		ways := addWayFlags(flags)
		flag.Language(flags)
		asJSON := flag.JSON(flags)
		return func(p *Program, args []string) Status {
			file, err := oneFile(args)
			if err != nil {
				return p.misuse(err)
			}
			made, _, status := p.load(file, *ways.way, *ways.turn)
			switch {
			case status != Done:
				return status
			case *asJSON:
				return p.printJSON(report.OrderJSON(p.words, made))
			}
			p.reportTo(p.Stdout).Order(made)
			return Done
		}
	},
}
