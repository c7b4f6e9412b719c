package report

import (
	"fmt"
	"slices"

	"drawdown/cmd/internal/job"
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace"
	"drawdown/geometry/unit"
	"drawdown/render/sheet/proof"
	"drawdown/render/words"
)

// Trace prints what was found, then what the user should look at.
func (r Report) Trace(a job.TraceAnswer) {
	fmt.Fprintf(r.To, r.Words.Sheet.Named+"\n", a.Title, proof.Counts(r.Words, a.Found))
	r.line("", TracedAt, finding.Values{"scale": a.Scale, "pixel": unit.Length(a.PixelMm)})
	columns := Columns{-8, 9, 9, 8, 8, -3}
	if len(a.Shapes) > 0 {
		columns.Row(r.To, "  "+r.say(HoleColumn, nil), "x mm", "y mm", "ø mm", r.say(EdgeColumn, nil))
	}
	for _, s := range a.Shapes {
		if s.Role == trace.Spot {
			continue
		}
		size, edge, mark := r.say(OpeningCell, nil), "", ""
		if s.Round() {
			size, edge = r.hundredth(s.DiameterMm), r.Words.Figure(fmt.Sprintf("%.3f", s.ScatterMm))
		}
		if len(s.Doubts) > 0 {
			mark = " ?"
		}
		columns.Row(r.To, "  "+s.ID, r.hundredth(s.At.X), r.hundredth(s.At.Y), size, edge, mark)
	}
	r.each(TakenFor, "", a.Taken)
	r.each(InDoubt, "", a.Found.Doubts)
	for _, s := range a.Shapes {
		r.each(InDoubt, s.ID, s.Doubts)
	}
	if a.Specks > 0 {
		r.line("", SpecksLeftOut, finding.Values{"specks": a.Specks, "from": unit.Length(a.SpeckMm), "to": unit.Length(a.SmallestMm)})
	}
	switch {
	case a.Straightened:
		r.line("", TurnedLevel, finding.Values{"by": unit.Angle(tidy(a.TurnedDeg))})
	case a.TurnedDeg == 0:
		r.line("", NotTurned, nil)
	}
	if a.Offer != nil {
		r.line("", BoltHolesNear, finding.Values{"off": unit.Length(a.Offer.OffMm), "layout": a.Offer.Named()})
	}
}

// each prints findings behind a label, of a hole where one is named.
func (r Report) each(label finding.Code, id string, found []finding.Finding) {
	for _, one := range found {
		r.line("", label, finding.Values{"id": id, "found": one})
	}
}

// traceOut is what trace --json prints. Lengths are in mm.
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
	Doubts     []string       `json:"doubts"`
	Layout     *layoutOut     `json:"layout,omitempty"`
	Files      []string       `json:"files"`
	Findings   []Found        `json:"findings"` // all doubts, and what sizes were taken for
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

// TraceJSON gives a trace as data, with the files that were written.
func TraceJSON(say *words.Catalogue, a job.TraceAnswer, files []string) traceOut {
	out := traceOut{
		Title: a.Title, Scale: say.Say(a.Scale), ScaleOffMm: micro(a.ScaleOffMm), PixelMm: micro(a.PixelMm),
		GreyLevels: a.GreyLevels, Part: a.Tone, TurnedDeg: micro(a.TurnedDeg), Specks: a.Specks, Taken: say.SayAll(a.Taken),
		Holes: []traceHoleOut{}, Outline: path(a.Outline), Doubts: say.SayAll(a.Doubts), Layout: layoutJSON(a.Offer), Files: files,
	}
	all := slices.Concat(a.Taken, a.Found.Doubts)
	for _, s := range a.Shapes {
		all = append(all, s.Doubts...)
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
