package cli

import (
	"errors"
	"fmt"
	"path/filepath"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/patterns"
	"drawdown/patterns/scan"
	"drawdown/render"
	"drawdown/render/sheet"
)

var traceCommand = command{
	name:    "trace",
	summary: "make a pattern from a flat scan or photo of a gasket",
	usage:   "SCAN [--dpi N] [--known F1,F5=LENGTH] [-o FOLDER] [--json]",
	operand: scanFile,
	about: `SCAN is a PNG, JPEG or TIFF picture of a gasket, or of the part itself, flat on
the glass with plain paper behind it. Each closed shape in the part is found.
What a round hole is for, only its size tells: --bolts, --dowels and --bores set
the diameters; else large ones are bores and the rest are for bolts. What is not
round is an opening. FOLDER gets the pattern, ready for drawdown card, and a
proof sheet with what was found drawn over the picture. Look at it. What is in
doubt is named, dashed on the sheet, and noted in the pattern.

Scale: the resolution that the file states, or --dpi. Scanners are wrong by up
to 1 %: --known F1,F5=190.4mm mends that by a distance measured on the part,
between two holes or two places in pixels, --known 102,80:2400,95=194.6mm; a
second one across gives each axis its own scale. Ids go by what the holes are
for and by their places: read them from a run with the same --bolts, --dowels
and --bores.
A photo serves where a rectangle of known size lies in the plane of the part:
  --corners 310,205:2890,240:2950,1790:260,1750 --frame 297x210mm
names its corners in pixels from the top left of the picture, clockwise from
the rectangle's top left.

Place: rows of holes and straight sides are laid level, with the middle of the
bolt holes at [0, 0]. If the face seen from above lay away from the glass, add
--mirror.

Limits: the part differs from its ground by 24 of 255 grey levels; a hole is 12
pixels across; nothing of the part lies beyond the picture. The shadow of a
thick part makes its holes smaller, and two holes torn into one are one opening.`,
	example: `
drawdown trace p4-pump-gasket --dowels 6mm
    P4 pump gasket: 6 bolt holes, 2 dowels, 1 bore, 1 opening
    ...
    in doubt: F3: its edge is torn or dirty: 81 % of it is round
    ...
    bolt holes lie within 0.01 mm of a 3 × 2 grid at 72 × 84 mm
    out/p4-pump-gasket.yaml
    out/p4-pump-gasket-proof.png
`,
	build: func(flags *pflag.FlagSet) runner {
		addTraceFlags(flags)
		folder := flag.Out(flags, "out", flag.OutUsage)
		paper := flag.Paper(flags)
		flag.Language(flags)
		asJSON := flag.JSON(flags)
		return func(p *Program, args []string) Status {
			if len(args) != 1 || args[0] == "" {
				return p.misuse("trace", "%v", oneScan(args))
			}
			if err := checkFolder(*folder); err != nil {
				return p.misuse("trace", "%v", err)
			}
			q := &quantities{flags: flags}
			ask := q.traceRequest()
			if q.err != nil {
				return p.refuse("trace", q.err)
			}
			size, err := sheet.FindPaper(*paper)
			if err != nil {
				return p.misuse("trace", "%v", err)
			}
			return p.trace(args[0], ask, sheet.Request{Paper: size, Words: p.words}, *folder, *asJSON)
		}
	},
}

func oneScan(args []string) error {
	if len(args) > 1 {
		return fmt.Errorf("one scan at a time: %q is one too many", args[1])
	}
	return errors.New("which scan? Name a picture file, a built-in one such as " + scan.Builtin()[0] + ", or - for standard input")
}

func (p *Program) trace(file string, ask job.TraceRequest, proof sheet.Request, folder string, asJSON bool) Status {
	answer, err := job.Trace(file, p.Stdin, ask)
	if wrong, ok := errors.AsType[*job.ScanError](err); ok {
		return p.fail(Wrong, wrong)
	}
	if err != nil {
		return p.unread(file, err)
	}
	pattern := answer.Pattern()
	if err := sparesScan(folder, pattern.Name, file); err != nil {
		return p.fail(Wrong, err)
	}
	drawn, err := answer.Proof(proof)
	if err != nil {
		return p.fail(Wrong, err)
	}
	files := []render.File{pattern, drawn}
	if err := answer.Check(); err != nil { // the proof shows why
		files = files[1:]
		if paths, writeErr := writeFiles(folder, files); writeErr != nil {
			return p.fail(Failed, writeErr)
		} else {
			return p.fail(Wrong, fmt.Errorf("%w: %s", err, paths[0]))
		}
	}
	if _, problems := patterns.Read(patterns.FromBytes(pattern.Name, pattern.Data)); problems.Stops() {
		p.report(problems)
		return Wrong
	}
	paths, err := writeFiles(folder, files)
	if err != nil {
		return p.fail(Failed, err)
	}
	if asJSON {
		return p.printJSON(traceJSON(answer, paths))
	}
	p.printTrace(answer)
	for _, path := range paths {
		fmt.Fprintln(p.Stdout, path)
	}
	return Done
}

// sparesScan refuses to write over the picture that was read.
func sparesScan(folder, name, file string) error {
	if err := sparesSource(filepath.Join(folder, name), file); err != nil {
		return fmt.Errorf("%s is the scan itself, and the pattern would take its place; name another folder with --out", file)
	}
	return nil
}
