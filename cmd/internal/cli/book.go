package cli

import (
	"errors"
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/patterns"
	"drawdown/render"
	"drawdown/render/sheet/book"
	"drawdown/render/words"
	"drawdown/sequence/overhaul"
)

var bookCommand = command{
	name:    "book",
	summary: "bind all papers of a machine into one book",
	usage:   "FILE [-o FOLDER] [flags]",
	operand: machineFile,
	about: `FILE lists the joints of a machine in the order of stripping, with what lies
between them:
  drawdown: 1
  machine: Fernhollow P4 pump engine
  tools: [hoist, timing pin]
  strip:
    - note: Drain oil and coolant
    - p4-cover                          # a built-in pattern, or a path
    - caution: {loosen: Timing pin in}  # for one side of the work
    - part: camshaft
      tighten: oil the bearings         # or loosen: what to see to
      new: [shaft seal]                 # bought before the build
      manual: [sprocket bolt]           # figures only in the manual
      figures: [end float]              # what else is looked up there
    - joint: p4-head
      gaskets: [head gasket]            # also sealant: liquid sealant
      again: after the first run        # when it is checked once more

The book holds contents, an overview of the joints, the tools, the steps of
stripping and each joint's loosening card, tray and condition sheet in that
order; then the steps of building, what to have ready (fasteners, gaskets,
lubricants, wrenches, counted over all joints, and a page for the figures of
the manual), the tightening cards backwards, and the check passes.
Cautions and notes stand on the card of the joint that follows.`,
	example: `
drawdown book p4-engine --paper letter -o books
    books/p4-engine.pdf
`,
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
				err = errors.New("which machine? Name a file, a built-in one such as p4-engine, or - for standard input")
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
		return p.misuse("book", "--example takes no file: %q is one too many", args[0])
	}
	text, _ := patterns.BuiltinMachineText(patterns.BuiltinMachines()[0])
	p.Stdout.Write(text) // the output keeps the error
	return Done
}

func (p *Program) book(file string, trays book.Trays, ask job.Printing, printing flag.Print) Status {
	made, status, ok := p.loadMachine(file)
	if !ok {
		return status
	}
	shown := p.progress(2 * len(made.Joints()))
	files, notes, err := job.Book(made, trays, ask, func(done, _ int) { shown.done(done) })
	shown.clear()
	if err != nil {
		return p.fail(Wrong, fmt.Errorf("the book cannot be drawn: %w", err))
	}
	return p.deliver(files, words.English().SayAll(notes), printing)
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
