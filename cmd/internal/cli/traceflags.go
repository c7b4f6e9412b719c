package cli

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/geometry"
	"drawdown/geometry/trace"
	"drawdown/geometry/unit"
)

func addTraceFlags(flags *pflag.FlagSet) {
	addTexts(flags, []textFlag{
		{"dpi", "`dots` per inch of the scan, such as 300, or 300x302 for across and down"},
		{"corners", "`pixels` of the corners of a rectangle: 310,205:2890,240:2950,1790:260,1750"},
		{"frame", "`width` and height of that rectangle: 297x210mm"},
		{"bolts", "`diameters` of holes for bolts, such as 6-14mm"},
		{"dowels", "`diameters` of holes for dowels, such as 8mm or 7.5-8.5mm"},
		{"bores", "`diameters` of bores, such as 30mm-"},
		{"smallest", "`diameter` below which a shape is dust, default 2.5mm"},
		{"part", "`tone` of the part where it is taken wrong: dark, light"},
		{"rotate", "`angle` to turn the level part anticlockwise: 90deg"},
		{"title", "`title` of the pattern"},
		{"machine", "`machine` that the part belongs to"},
	})
	flag.Offer(flags, "part", flag.Texts(tones)...)
	flags.StringArray("known", nil, "`distance` measured on the part: F1,F5=190.4mm; may be given again")
	flags.Bool("as-scanned", false, "leave the part turned as it lies in the picture")
	flags.Bool("mirror", false, "change left and right over: the face seen from above lay away from the glass")
}

// tones lists what --part can say.
var tones = []trace.Tone{trace.ToneDark, trace.ToneLight}

func (q *quantities) traceRequest() job.TraceRequest {
	var ask job.TraceRequest
	q.atMostOne("corners", "dpi")
	q.atMostOne("corners", "known")
	q.needs("corners", "frame", "297x210mm")
	q.needs("frame", "corners", "310,205:2890,240:2950,1790:260,1750")
	ask.NamedX, ask.NamedY = two(q, "dpi", dotsPerInch)
	known, _ := q.flags.GetStringArray("known")
	for _, text := range known {
		k, err := knownDistance(text)
		if err != nil {
			q.fail(fmt.Errorf("--known %q: %w", text, err))
		}
		ask.Known = append(ask.Known, k)
	}
	ask.Corners, _ = read(q, "corners", fourPlaces)
	ask.WidthMm, ask.HeightMm = two(q, "frame", twoLengths)
	ask.Holes = q.holeRule()
	ask.SmallestMm = float64(above(q, "smallest", bareLength))
	ask.Tone, _ = oneOf(q, "part", tones)
	ask.AsScanned, _ = q.flags.GetBool("as-scanned")
	ask.Mirrored, _ = q.flags.GetBool("mirror")
	turn, _ := read(q, "rotate", unit.ParseAngle)
	ask.TurnDeg = float64(turn)
	ask.Title, _ = q.text("title")
	ask.Machine, _ = q.text("machine")
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
		return [2]float64{}, fmt.Errorf("%q is no resolution; allowed: %d to %d, such as 300, or 300x302", text, least, most)
	}
	return [2]float64{x, y}, nil
}

// knownDistance reads F1,F5=190.4mm and 102,80:2400,95=194.6mm.
func knownDistance(text string) (k trace.Known, err error) {
	example := errors.New("write F1,F5=190.4mm, or places in pixels: 102,80:2400,95=194.6mm")
	ends, length, ok := strings.Cut(text, "=")
	if !ok {
		return k, example
	}
	mm, err := bareLength(strings.TrimSpace(length))
	if err != nil {
		return k, err
	}
	if k.Mm = float64(mm); !(k.Mm > 0) {
		return k, errors.New("the distance is above 0")
	}
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
		return k, fmt.Errorf("both ends are %s", k.FromID)
	}
	return k, nil
}

var holeID = regexp.MustCompile(`^[FDBP][0-9]+$`)

func fourPlaces(text string) (places [4]geometry.Point, err error) {
	parts := strings.Split(text, ":")
	if len(parts) != 4 {
		return places, fmt.Errorf("%q names %d places; allowed: 4, such as 310,205:2890,240:2950,1790:260,1750", text, len(parts))
	}
	for i, part := range parts {
		if places[i], err = pixelPlace(part); err != nil {
			return places, err
		}
	}
	return places, nil
}

// pixelPlace reads 310,205.5: from the top left of the picture.
func pixelPlace(text string) (geometry.Point, error) {
	const furthest = 100_000
	first, second, _ := strings.Cut(text, ",")
	x, y, ok := twoNumbers(first, second, parseFloat, -furthest, furthest)
	if !ok {
		return geometry.Point{}, fmt.Errorf("%q is no place in pixels; write across and down, such as 310,205", text)
	}
	return geometry.Point{X: x, Y: y}, nil
}

func parseFloat(text string) (float64, error) { return strconv.ParseFloat(text, 64) }

// twoNumbers reads two numbers that lie between two ends.
func twoNumbers[T int | float64](first, second string, parse func(string) (T, error), least, most T) (x, y T, ok bool) {
	x, err1 := parse(strings.TrimSpace(first))
	y, err2 := parse(strings.TrimSpace(second))
	return x, y, err1 == nil && err2 == nil && min(x, y) >= least && max(x, y) <= most
}
