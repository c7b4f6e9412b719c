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
	flags.String("dpi", "", "`dots` per inch of the scan, such as 300, or 300x302 for across and down")
	flags.StringArray("known", nil, "`distance` measured on the part: F1,F5=190.4mm; may be given again")
	flags.String("corners", "", "`pixels` of the corners of a rectangle: 310,205:2890,240:2950,1790:260,1750")
	flags.String("frame", "", "`width` and height of that rectangle: 297x210mm")
	flags.String("bolts", "", "`diameters` of holes for bolts, such as 6-14mm")
	flags.String("dowels", "", "`diameters` of holes for dowels, such as 8mm or 7.5-8.5mm")
	flags.String("bores", "", "`diameters` of bores, such as 30mm-")
	flags.String("smallest", "", "`diameter` below which a shape is dust, default 2.5mm")
	flags.String("part", "", "`tone` of the part where it is taken wrong: dark, light")
	flag.Offer(flags, "part", flag.Texts(tones)...)
	flags.Bool("as-scanned", false, "leave the part turned as it lies in the picture")
	flags.String("rotate", "", "`angle` to turn the level part anticlockwise: 90deg")
	flags.Bool("mirror", false, "change left and right over: the face seen from above lay away from the glass")
	flags.String("title", "", "`title` of the pattern")
	flags.String("machine", "", "`machine` that the part belongs to")
}

// tones lists what --part can say.
var tones = []trace.Tone{trace.ToneDark, trace.ToneLight}

func (q *quantities) traceRequest() job.TraceRequest {
	var ask job.TraceRequest
	q.atMostOne("corners", "dpi")
	q.atMostOne("corners", "known")
	q.needs("corners", "frame", "297x210mm")
	q.needs("frame", "corners", "310,205:2890,240:2950,1790:260,1750")
	ask.DPIX, ask.DPIY = q.dotsPerInch()
	known, _ := q.flags.GetStringArray("known")
	for _, text := range known {
		k, err := knownDistance(text)
		if err != nil {
			q.fail(fmt.Errorf("--known %q: %w", text, err))
		}
		ask.Known = append(ask.Known, k)
	}
	ask.Corners, _ = read(q, "corners", fourPlaces)
	ask.FrameWidthMm, ask.FrameHeightMm = q.twoLengths("frame", false)
	ask.Holes = q.holeRule()
	ask.SmallestMm = float64(above(q, "smallest", bareLength))
	ask.Tone, _ = oneOf(q, "part", tones)
	ask.AsScanned, _ = q.flags.GetBool("as-scanned")
	ask.Mirrored, _ = q.flags.GetBool("mirror")
	if angle, set := read(q, "rotate", unit.ParseAngle); set {
		ask.TurnDeg = float64(angle)
	}
	ask.Title, _ = q.text("title")
	ask.Machine, _ = q.text("machine")
	return ask
}

const (
	leastDPI = 50
	mostDPI  = 10_000
)

func (q *quantities) dotsPerInch() (x, y float64) {
	text, set := q.text("dpi")
	if !set {
		return 0, 0
	}
	first, second, two := halves(text)
	if !two {
		second = first
	}
	x, err1 := strconv.ParseFloat(first, 64)
	y, err2 := strconv.ParseFloat(second, 64)
	if err1 != nil || err2 != nil || !(x >= leastDPI && x <= mostDPI && y >= leastDPI && y <= mostDPI) {
		q.fail(fmt.Errorf("--dpi %q is no resolution; allowed: %d to %d, such as 300, or 300x302", text, leastDPI, mostDPI))
		return 0, 0
	}
	return x, y
}

// knownDistance reads F1,F5=190.4mm and 102,80:2400,95=194.6mm.
func knownDistance(text string) (job.KnownDistance, error) {
	const example = "write F1,F5=190.4mm, or places in pixels: 102,80:2400,95=194.6mm"
	var k job.KnownDistance
	ends, length, ok := strings.Cut(text, "=")
	if !ok {
		return k, errors.New(example)
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
		return k, errors.New(example)
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
	first, second, _ := strings.Cut(text, ",")
	x, err1 := strconv.ParseFloat(strings.TrimSpace(first), 64)
	y, err2 := strconv.ParseFloat(strings.TrimSpace(second), 64)
	const furthest = 100_000
	if err1 != nil || err2 != nil || !(x >= -furthest && x <= furthest && y >= -furthest && y <= furthest) {
		return geometry.Point{}, fmt.Errorf("%q is no place in pixels; write across and down, such as 310,205", text)
	}
	return geometry.Point{X: x, Y: y}, nil
}
