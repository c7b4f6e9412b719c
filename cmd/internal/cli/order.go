package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/report"
	"drawdown/render/sheet/card"
	"drawdown/sequence/plan"
)

var orderCommand = command{
	name:    "order",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		ways := addWayFlags(flags)
		flag.Language(flags)
		side := flag.Choice(flags, "side", card.BothSides, card.SideChoices, "which `side`: ")
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
				return p.printJSON(report.OrderJSON(p.words, made, sideOf(*side)))
			}
			p.reportTo(p.Stdout).Order(made, sideOf(*side))
			return Done
		}
	},
}

// sideOf returns the side of a plan that a flag names.
func sideOf(side card.Sides) plan.CautionSide {
	if side == card.BothSides {
		return plan.CautionBoth
	}
	return plan.CautionSide(side)
}
