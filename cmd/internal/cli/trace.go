package cli

import (
	"cmp"
	"errors"
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/patterns"
	"drawdown/patterns/scan"
	"drawdown/render"
	"drawdown/render/words"
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
		folder := outFlag(flags)
		language := languageFlag(flags)
		asJSON := jsonFlag(flags)
		return func(p *Program, args []string) Status {
			file, err := oneSource(args, "scan", "a picture file", scan.Builtin()[0])
			if err == nil {
				err = checkFolder(*folder)
			}
			proofWords, errLanguage := words.Find(*language)
			if err := cmp.Or(err, errLanguage); err != nil {
				return p.misuse("trace", "%v", err)
			}
			q := &quantities{flags: flags}
			ask := q.traceRequest()
			if q.err != nil {
				return p.refuse("trace", q.err)
			}
			return p.trace(file, ask, proofWords, *folder, *asJSON)
		}
	},
}

func (p *Program) trace(file string, ask job.TraceRequest, proofWords *words.Catalogue, folder string, asJSON bool) Status {
	answer, err := job.Trace(file, p.Stdin, ask)
	if wrong, ok := errors.AsType[*job.ScanError](err); ok {
		return p.fail(Wrong, wrong)
	}
	if err != nil {
		return p.unread(file, err)
	}
	pattern := answer.Pattern()
	if err := sparesSource(folder, pattern, file, "scan"); err != nil {
		return p.fail(Wrong, err)
	}
	proof, err := answer.Proof(proofWords)
	if err != nil {
		return p.fail(Wrong, err)
	}
	files := []render.File{pattern, proof}
	lacks := answer.Check()
	if lacks != nil {
		files = files[1:] // the proof shows why
	}
	if _, problems := patterns.Read(patterns.FromBytes(pattern.Name, pattern.Data)); lacks == nil && problems.Stops() {
		p.report(problems)
		return Wrong
	}
	paths, err := writeFiles(folder, files)
	if err != nil {
		return p.fail(Failed, err)
	}
	if lacks != nil {
		return p.fail(Wrong, fmt.Errorf("%w: %s", lacks, paths[0]))
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
