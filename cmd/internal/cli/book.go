package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/machine"
	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/render"
	"drawdown/render/sheet/book"
	"drawdown/sequence/overhaul"
)

var bookCommand = command{
	name:    "book",
	operand: machineFile,
	build: func(flags *pflag.FlagSet) runner {
		start := flags.Bool("example", false, "print a machine file to start from")
		trays := flag.Choice(flags, "trays", book.FullTrays, book.TrayChoices, "trays at their true size, reduced to a `page` each, or none: ")
		printing := flag.AddPrint(flags, render.PDF)
		return func(p *Program, args []string) Status {
			if *start {
				return p.bookExample(args)
			}
			ask, err := printing.Chosen()
			if err != nil {
				return p.misuse("book", "%v", err)
			}
			file, err := oneFile(args)
			if err != nil && len(args) == 0 {
				err = finding.Failed(WhichMachine, nil)
			}
			if err != nil {
				return p.misuse("book", "%v", err)
			}
			return p.book(file, *trays, ask, printing)
		}
	},
}

func (p *Program) bookExample(args []string) Status {
	if len(args) > 0 {
		return p.misuse("book", "%v", finding.Failed(ExampleAlone, finding.Values{"file": args[0]}))
	}
	text, _ := patterns.Machines.Text(patterns.Machines.Names()[0])
	p.Stdout.Write(text) // the output keeps the error
	return Done
}

func (p *Program) book(file string, trays book.Trays, ask job.Printing, printing flag.Print) Status {
	made, status, ok := p.loadMachine(file)
	if !ok {
		return status
	}
	shown := machine.NewProgress(p.Stderr, 2*len(made.Joints()))
	files, notes, err := job.Book(made, trays, ask, func(done, _ int) { shown.Done(done) })
	shown.Clear()
	if err != nil {
		return p.fail(Wrong, finding.Failed(BookNotDrawn, finding.Values{"why": err}))
	}
	return p.deliver(files, p.words.SayAll(notes), printing)
}

// loadMachine plans all joints of a machine and reports their problems. Not ok
// means that the status is final.
func (p *Program) loadMachine(file string) (made overhaul.Overhaul, status Status, ok bool) {
	made, problems, err := job.LoadMachine(file, p.Stdin)
	if err != nil {
		return made, p.unread(file, err), false
	}
	p.report(problems)
	if problems.Stops() {
		return made, Wrong, false
	}
	return made, Done, true
}
