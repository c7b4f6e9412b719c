package cli

import (
	"cmp"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/machine"
	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/render"
	"drawdown/render/sheet/book"
)

var bookCommand = command{
	name:    "book",
	operand: machineFile,
	build: func(flags *pflag.FlagSet) runner {
		start := flags.Bool("example", false, "print a machine file to start from")
		trays := flag.Choice(flags, "trays", book.FullTrays, book.TrayChoices, "trays at true size, reduced to one `page` each, or none: ")
		printing := flag.AddPrint(flags, render.PDF)
		return func(p *Program, args []string) Status {
			if *start {
				text, _ := patterns.Machines.Text(patterns.Machines.Names()[0])
				return p.example(args, text)
			}
			ask, err := printing.Chosen()
			file, errFile := oneFile(args)
			if len(args) == 0 {
				errFile = finding.Failed(WhichMachine, nil)
			}
			if err := cmp.Or(err, errFile); err != nil {
				return p.misuse(err)
			}
			return p.book(file, *trays, ask, printing)
		}
	},
}

// example prints a file to start from.
func (p *Program) example(args []string, text []byte) Status {
	if len(args) > 0 {
		return p.misuse(finding.Failed(ExampleAlone, finding.Values{"file": args[0]}))
	}
	p.Stdout.Write(text) // p.Stdout keeps the error
	return Done
}

func (p *Program) book(file string, trays book.Trays, ask job.Printing, printing flag.Print) Status {
	made, problems, err := job.LoadMachine(file, p.Stdin)
	problems = append(job.DatedAhead(file, made.Heading, p.Today), problems...)
	if status := p.stopped(file, problems, err); status != Done {
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
