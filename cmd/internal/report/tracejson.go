package report

import (
	"slices"

	"drawdown/cmd/internal/job"
	"drawdown/geometry"
	"drawdown/geometry/trace"
	"drawdown/render/words"
)

// traceOut is the output of trace --json. Lengths are in mm.
type traceOut struct {
	Title      string         `json:"title"`
	Scale      string         `json:"scale"`
	ScaleOffMm float64        `json:"scale_off_mm,omitempty"`
	PixelMm    float64        `json:"pixel_mm"`
	GreyLevels float64        `json:"grey_levels"`
	Part       trace.Tone     `json:"part"`
	TurnedDeg  float64        `json:"turned_deg"`
	Holes      []traceHoleOut `json:"holes"`
	Outline    [][2]float64   `json:"outline"`
	Specks     int            `json:"specks"`
	Taken      []string       `json:"taken,omitempty"`
	Sizes      []sizeOut      `json:"sizes"`
	Doubts     []doubtOut     `json:"doubts"`      // of one place each
	ScanDoubts []string       `json:"scan_doubts"` // of the picture as a whole
	Layout     *layoutOut     `json:"layout,omitempty"`
	Files      []string       `json:"files"`
	Findings   []Found        `json:"findings"` // all doubts, and the uses assumed for sizes
}

// sizeOut is a size of round holes and their number.
type sizeOut struct {
	DiameterMm float64    `json:"diameter_mm"`
	Holes      int        `json:"holes"`
	Role       trace.Role `json:"role"`
}

// doubtOut is something to check by eye at a place of the part, in mm.
type doubtOut struct {
	ID   string     `json:"id"`
	At   [2]float64 `json:"at"`
	What string     `json:"what"`
}

type traceHoleOut struct {
	ID         string       `json:"id"`
	Role       trace.Role   `json:"role"`
	X          float64      `json:"x_mm"`
	Y          float64      `json:"y_mm"`
	DiameterMm float64      `json:"diameter_mm"`
	EdgeMm     float64      `json:"edge_scatter_mm"`
	Kept       float64      `json:"edge_kept"` // share of the edge, 0 to 1
	Pixel      [2]float64   `json:"pixel"`
	Doubts     []string     `json:"doubts"`
	Path       [][2]float64 `json:"path,omitempty"` // of an opening
}

// TraceJSON returns a trace as data, with the files that were written.
func TraceJSON(say *words.Catalogue, a job.TraceAnswer, files []string) traceOut {
	out := traceOut{
		Title: a.Title, Scale: say.Say(a.Scale), ScaleOffMm: micro(a.ScaleOffMm), PixelMm: micro(a.PixelMm),
		GreyLevels: a.GreyLevels, Part: a.Tone, TurnedDeg: micro(a.TurnedDeg), Specks: a.Specks, Taken: say.SayAll(a.Taken),
		Holes: []traceHoleOut{}, Outline: path(a.Outline), Sizes: []sizeOut{}, Doubts: []doubtOut{}, ScanDoubts: say.SayAll(a.Found.Doubts), Layout: layoutJSON(a.Offer), Files: files,
	}
	all := slices.Concat(a.Taken, a.Found.Doubts)
	for _, size := range a.Found.Sizes() {
		out.Sizes = append(out.Sizes, sizeOut{micro(size.DiameterMm), size.Holes, size.Role})
	}
	for _, s := range a.Shapes {
		all = append(all, s.Doubts...)
		for _, doubt := range s.Doubts {
			out.Doubts = append(out.Doubts, doubtOut{s.ID, xy(s.At), say.Say(doubt)})
		}
		h := traceHoleOut{
			ID: s.ID, Role: s.Role, X: micro(s.At.X), Y: micro(s.At.Y), DiameterMm: micro(s.DiameterMm), EdgeMm: micro(s.ScatterMm),
			Kept: micro(s.Kept), Pixel: xy(s.Pixel), Doubts: say.SayAll(s.Doubts),
		}
		if s.Role == trace.Port {
			h.Path = path(s.Edge)
		}
		out.Holes = append(out.Holes, h)
	}
	out.Findings = foundJSON(say, all...)
	return out
}

func path(line []geometry.Point) [][2]float64 {
	var out [][2]float64
	for _, p := range line {
		out = append(out, xy(p))
	}
	return out
}
