package cli

import (
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/render"
	"drawdown/render/words"
	"drawdown/sequence/exercise"
)

var handoutCommand = command{
	name:    "handout",
	summary: "draw sheets for a class to fill in, with the key",
	usage:   "FILE [-o FOLDER] [flags]",
	about: `Writes the joint without numbers for students to fill in, and the key in a file
of its own. With --layouts other parts take its place, made up after the same
machine: heads, covers, flanges, bearing caps, each unlike the others. The same
seed gives the same parts.

--make why tells on one page, on A5 two, why the part is worked in its order,
drawn from the part itself; figures in it are worked out (≈) and have their
band. The pages after it show what each bolt keeps, pass by pass, where the
joint is known.

--make page writes an HTML page for the projector that plays the work step by
step, with play, step and speed; it needs no network. --make film writes the
order, stage by stage, as a moving picture (GIF) for a slide.

--mark reads a table of answers, a line each: student, sheet (where there are
several) and order, with blanks between the names, or a column a position:
  student,sheet,order
  Ana M.,1,M3 M8 M9 M4 M2 M7 M10 M5 M1 M6 F2 F3 F1 F4
Every order that keeps the trade's rules is right, not only that of the key; see
drawdown help check. It tells each student what is wrong and where, and writes
half a page for each and a summary of the class; a blank order is no answer. A
row that cannot be read is not marked: it is named with its line, and the others
are marked. A table of which no row can be read ends with status 1.
With made-up parts give the same --layouts and --seed as for the sheets. Names
are printed as they are given and kept nowhere else.`,
	example: `
drawdown handout p4-head
    out/p4-head-handout.pdf
    out/p4-head-key.pdf
drawdown handout p4-head --layouts 12 --seed 7 --lang de -o class
    class/p4-head-handout.pdf
    class/p4-head-key.pdf
drawdown handout p4-head --make page,film
    out/p4-head-order.html
    out/p4-head-order.gif
`,
	build: buildHandout,
}

// handoutFlags are the flags of the command that are its own.
type handoutFlags struct {
	flags   *pflag.FlagSet
	make    *[]job.HandoutPart
	loosen  *bool
	mark    *string
	layouts *int
	seed    *uint64
}

func addHandoutFlags(flags *pflag.FlagSet) handoutFlags {
	return handoutFlags{
		flags:   flags,
		make:    flag.List(flags, "make", []job.HandoutPart{job.HandoutSheets, job.HandoutKey}, job.HandoutParts, "what to `make`, with commas between: "),
		loosen:  flags.Bool("loosen", false, "ask for the loosening order, and show it"),
		mark:    flags.String("mark", "", "mark the answers of a class in this `table`, CSV, instead"),
		layouts: flags.Int("layouts", 0, fmt.Sprintf("`number` of parts made up, 1 to %d, instead of the file's", exercise.Most)),
		seed:    flags.Uint64("seed", 1, "whole `number` that the made-up parts come from"),
	}
}

// chosen gives what the flags ask for, or what is wrong with them.
func (f handoutFlags) chosen() (ask job.HandoutRequest, err error) {
	if f.flags.Changed("mark") && *f.mark == "" {
		return ask, fmt.Errorf("--mark needs the name of a table; - is standard input")
	}
	if f.flags.Changed("mark") && f.flags.Changed("make") {
		return ask, fmt.Errorf("--mark and --make do not go together: mark the answers, or make the sheets")
	}
	if f.flags.Changed("layouts") && (*f.layouts < 1 || *f.layouts > exercise.Most) {
		return ask, fmt.Errorf("--layouts %d; allowed: 1 to %d", *f.layouts, exercise.Most)
	}
	if f.flags.Changed("seed") && *f.layouts == 0 {
		return ask, fmt.Errorf("--seed makes parts up, so it needs --layouts too")
	}
	ask.Parts, ask.Loosening, ask.Layouts, ask.Seed = *f.make, *f.loosen, *f.layouts, *f.seed
	return ask, nil
}

func buildHandout(flags *pflag.FlagSet) runner {
	own := addHandoutFlags(flags)
	printing := flag.AddPrint(flags, render.PDF)
	return func(p *Program, args []string) Status {
		ask, err := own.chosen()
		if err == nil {
			ask.Printing, err = printing.Chosen()
		}
		if err != nil {
			return p.misuse("handout", "%v", err)
		}
		file, err := oneFile(args)
		if err != nil {
			return p.misuse("handout", "%v", err)
		}
		if file == "-" && *own.mark == "-" {
			return p.misuse("handout", "standard input cannot be both the pattern and the table")
		}
		made, status, ok := p.load(file, "", "")
		if !ok {
			return status
		}
		if *own.mark != "" {
			return p.grade(made, ask, *own.mark, printing)
		}
		files, notes, err := job.Handout(made, ask)
		if err != nil {
			return p.fail(Wrong, err)
		}
		return p.deliver(files, words.English().SayAll(notes), printing)
	}
}
