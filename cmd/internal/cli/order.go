package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/report"
)

var orderCommand = command{
	name: "order",
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
				return p.printJSON(report.OrderJSON(p.words, made))
			}
			p.reportTo(p.Stdout).Order(made)
			return Done
		}
	},
}
