package cli

import (
	"cmp"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/machine"
	"drawdown/cmd/internal/report"
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace"
	"drawdown/geometry/trace/photo"
	"drawdown/geometry/unit"
	"drawdown/patterns"
	"drawdown/patterns/scan"
	"drawdown/render"
	"drawdown/render/sheet"
)

var traceCommand = command{
	name:    "trace",
	operand: scanFile,
	build: func(flags *pflag.FlagSet) runner {
		addTraceFlags(flags)
		folder := flag.Out(flags, "out", flag.OutUsage)
		paper := flag.Paper(flags)
		flag.Language(flags)
		asJSON := flag.JSON(flags)
		replace := addReplace(flags, replaceUsage)
		return func(p *Program, args []string) Status {
			file, err := oneSource(args, "scan", scan.Builtin()[0])
			size, errPaper := sheet.FindPaper(*paper)
			if err := cmp.Or(err, errPaper, files.CheckFolder(*folder)); err != nil {
				return p.misuse(err)
			}
			q := newQuantities(flags)
			ask := q.traceRequest()
			if q.Err != nil {
				return p.refuse(q.Err)
			}
			ask.Words = p.words
			fixed, problems, err := job.Fixes(file)
			if status := p.stopped(file, problems, err); status != Done {
				return status
			}
			ask.Fixes = fixed
			return p.trace(file, ask, sheet.Request{Paper: size, Words: p.words}, traceTo{*folder, *asJSON, *replace})
		}
	},
}

// traceTo is where the results of a trace go.
type traceTo struct {
	folder          string
	asJSON, replace bool
}

func (p *Program) trace(file string, ask job.TraceRequest, proof sheet.Request, to traceTo) Status {
	done := machine.Waiting(p.Stderr)
	answer, err := job.Trace(file, p.Stdin, ask)
	done()
	if wrong, ok := errors.AsType[*job.ScanError](err); ok {
		return p.fail(Wrong, wrong)
	}
	if err != nil {
		return p.unread(file, err)
	}
	pattern := answer.Pattern()
	if err := cmp.Or(sparesSource(to.folder, pattern, file, "scan"), sparesEdited(to.folder, pattern.Name, to.replace)); err != nil {
		return p.fail(Wrong, err)
	}
	drawn, err := answer.Proof(proof)
	if err != nil {
		return p.fail(Wrong, err)
	}
	made, lacks := []render.File{pattern, drawn}, answer.Check()
	if lacks != nil {
		made = made[1:] // the proof shows why
	} else if _, problems := patterns.Read(patterns.FromBytes(pattern.Name, pattern.Data)); problems.Stops() {
		p.report(problems)
		return Wrong
	}
	paths, err := files.Write(to.folder, made)
	switch {
	case err != nil:
		return p.fail(Failed, err)
	case to.asJSON:
		if status := p.printJSON(report.TraceJSON(p.words, answer, paths)); status != Done {
			return status
		}
	case lacks != nil:
		p.reportTo(p.Stderr).Trace(answer) // the sizes to choose from
	default:
		p.reportTo(p.Stdout).Trace(answer)
	}
	if lacks != nil {
		return p.fail(Wrong, fmt.Errorf("%w: %s", lacks, paths[0]))
	}
	if !to.asJSON {
		p.printPaths(paths)
	}
	return Done
}

func addTraceFlags(flags *pflag.FlagSet) {
	addTexts(flags, []textFlag{
		{"dpi", "`dots` per inch of the scan, such as 300, or 300x302 for across and down"},
		{"frame", "photo: `width` and height of the sheet under the part: 297x210mm"},
		{"target", "photo: `paper` of the printed target under the part, or the measured size of its band: a4, 272.4x161.5mm"},
		{"corners", "`pixels` of the corners of the sheet, if it is not found: 310,205:2890,240:2950,1790:260,1750"},
		{"dowels", "`diameters` of holes for dowels, such as 8mm or 7.5-8.5mm"},
		{"bores", "`diameters` of bores, such as 30mm-"},
		{"smallest", "`diameter` below which a shape is dust, default 2.5mm"},
		{"part", "`tone` of the part, if it is detected wrong: dark, light"},
		{"rotate", "`angle` to turn the level part anticlockwise: 90deg"},
		{"title", "`title` of the pattern"},
		{"machine", "`machine` that the part belongs to"},
	})
	flag.Offer(flags, "part", flag.Texts(tones)...)
	addBolts(flags, "`diameters` of holes for bolts: 6-14mm, or 6-7mm,12-13mm; may be repeated")
	flags.StringArray("known", nil, "`distance` measured on the part: F1,F5=190.4mm; may be repeated")
	flags.Bool("as-scanned", false, "do not turn the part level")
	flags.Bool("mirror", false, "swap left and right: the top face was away from the glass")
}

var tones = []trace.Tone{trace.ToneDark, trace.ToneLight}

func (q *quantities) traceRequest() job.TraceRequest {
	var ask job.TraceRequest
	q.AtMostOne("frame", "dpi")
	q.AtMostOne("target", "dpi")
	q.AtMostOne("frame", "target")
	if _, target := q.Text("target"); !target {
		q.Needs("corners", "frame", "297x210mm")
	}
	ask.NamedX, ask.NamedY = two(q, "dpi", dotsPerInch)
	known, _ := q.Flags.GetStringArray("known")
	for _, text := range known {
		k, err := knownDistance(text)
		if err != nil {
			q.Fail(fmt.Errorf("--known %q: %w", text, err))
		}
		ask.Known = append(ask.Known, k)
	}
	ask.Corners, _ = flag.Read(q, "corners", fourPlaces)
	ask.WidthMm, ask.HeightMm = two(q, "frame", twoLengths)
	if w, h := two(q, "target", bandSize); w > 0 {
		ask.WidthMm, ask.HeightMm, ask.Target = w, h, true
	}
	ask.Holes = q.holeRule()
	ask.SmallestMm = float64(flag.Within(q, "smallest", unit.Sensible.MachineHole, bareLength))
	ask.Tone, _ = flag.OneOf(q, "part", tones)
	ask.AsScanned, _ = q.Flags.GetBool("as-scanned")
	ask.Mirrored, _ = q.Flags.GetBool("mirror")
	ask.TurnDeg = float64(flag.Within(q, "rotate", unit.Sensible.Orientation, unit.ParseAngle))
	ask.Title, _ = q.Text("title")
	ask.Machine, _ = q.Text("machine")
	return ask
}

// dotsPerInch reads 300, or 300x302 for across and down.
func dotsPerInch(text string) ([2]float64, error) {
	const least, most = 50, 10_000
	first, second, differ := halves(text)
	if !differ {
		second = first
	}
	x, y, ok := twoNumbers(first, second, parseFloat, least, most)
	if !ok {
		return [2]float64{}, finding.Failed(NoResolution, finding.Values{"written": text, "least": least, "most": most})
	}
	return [2]float64{x, y}, nil
}

// bandSize reads the paper of a target, or the measured size of its band.
func bandSize(text string) ([2]float64, error) {
	paper, err := sheet.FindPaper(text)
	if err != nil {
		return twoLengths(text)
	}
	paper = paper.Landscape()
	w, h := photo.TargetSize(paper.Width, paper.Height)
	return [2]float64{w, h}, nil
}

// knownDistance reads F1,F5=190.4mm and 102,80:2400,95=194.6mm.
func knownDistance(text string) (k trace.Known, err error) {
	example := finding.Failed(KnownUnread, nil)
	ends, length, ok := strings.Cut(text, "=")
	if !ok {
		return k, example
	}
	mm, err := unit.Within(unit.Sensible.Distance, bareLength)(strings.TrimSpace(length))
	if err != nil {
		return k, err
	}
	k.Mm = float64(mm)
	if from, to, places := strings.Cut(ends, ":"); places {
		var err1, err2 error
		k.From, err1 = pixelPlace(from)
		k.To, err2 = pixelPlace(to)
		return k, errors.Join(err1, err2)
	}
	from, to, ok := strings.Cut(ends, ",")
	k.FromID, k.ToID = strings.ToUpper(strings.TrimSpace(from)), strings.ToUpper(strings.TrimSpace(to))
	if !ok || !holeID.MatchString(k.FromID) || !holeID.MatchString(k.ToID) {
		return k, example
	}
	if k.FromID == k.ToID {
		return k, finding.Failed(KnownSame, finding.Values{"id": k.FromID})
	}
	return k, nil
}

var holeID = regexp.MustCompile(`^[FDBP][0-9]+$`)

func fourPlaces(text string) (places [4]geometry.Point, err error) {
	parts := strings.Split(text, ":")
	if len(parts) != 4 {
		return places, finding.Failed(CornersCount, finding.Values{"written": text, "n": len(parts)})
	}
	for i, part := range parts {
		if places[i], err = pixelPlace(part); err != nil {
			return places, err
		}
	}
	return places, nil
}

// pixelPlace reads 310,205.5, measured from the top left of the picture.
func pixelPlace(text string) (geometry.Point, error) {
	const furthest = 100_000
	first, second, _ := strings.Cut(text, ",")
	x, y, ok := twoNumbers(first, second, parseFloat, -furthest, furthest)
	if !ok {
		return geometry.Point{}, finding.Failed(NoPixel, finding.Values{"written": text})
	}
	return geometry.Point{X: x, Y: y}, nil
}

func parseFloat(text string) (float64, error) { return strconv.ParseFloat(text, 64) }

// twoNumbers reads two numbers between two limits.
func twoNumbers[T int | float64](first, second string, parse func(string) (T, error), least, most T) (x, y T, ok bool) {
	x, err1 := parse(strings.TrimSpace(first))
	y, err2 := parse(strings.TrimSpace(second))
	return x, y, err1 == nil && err2 == nil && min(x, y) >= least && max(x, y) <= most
}

func addBolts(flags *pflag.FlagSet, usage string) { flags.StringArray("bolts", nil, usage) }
