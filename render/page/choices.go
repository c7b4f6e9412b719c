package page

import (
	"cmp"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"drawdown/render/words"
	"drawdown/sequence/measure"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// SeenAt is a choice of a form: the fields that it gives an entry, as JSON, and its
// name.
type SeenAt struct {
	Fields, Name string
	Unit         string
	Shims        bool // the fitted shim is asked for too
}

// chosen are the fields of an entry that a choice gives.
type chosen struct {
	Joint   string         `json:"joint,omitempty"`
	Measure string         `json:"measure,omitempty"`
	Unit    string         `json:"unit,omitempty"`
	Place   *measure.Place `json:"place,omitempty"`
}

func (c chosen) fields() string {
	text, err := json.Marshal(c)
	if err != nil {
		panic(err) // texts alone
	}
	return string(text)
}

// placesOf lists the stations and bores of a joint, and where they are.
func placesOf(p plan.Plan) (all []SeenAt, at map[string]Spot) {
	at = map[string]Spot{}
	for _, s := range p.Joint.Stations {
		name := s.ID
		if s.Label != "" {
			name += " " + s.Label
		}
		all = append(all, SeenAt{Fields: chosen{Place: &measure.Place{Station: s.ID}}.fields(), Name: name})
		at[s.ID] = Spot{s.At.X, s.At.Y}
	}
	for _, b := range p.Joint.Bores {
		if b.Label != "" {
			all = append(all, SeenAt{Fields: chosen{Place: &measure.Place{Label: b.Label}}.fields(), Name: b.Label})
			at[b.Label] = Spot{b.Centre.X, b.Centre.Y}
		}
	}
	return all, at
}

// scaleOf finds where the part's zero is in the picture, and how large a millimetre
// of the part: by the two marks that are furthest apart.
func scaleOf(p plan.Plan, marks []Mark) string {
	at := map[string]Spot{}
	for _, f := range p.Joint.Fasteners {
		at[f.ID] = Spot{f.At.X, f.At.Y}
	}
	if len(marks) == 0 {
		return ""
	}
	first, other := marks[0], marks[0]
	for _, m := range marks {
		if at[first.ID].distance(at[m.ID]) > at[first.ID].distance(at[other.ID]) {
			other = m
		}
	}
	apart := at[first.ID].distance(at[other.ID])
	if apart == 0 {
		return ""
	}
	size := Spot{first.X, first.Y}.distance(Spot{other.X, other.Y}) / apart
	return fmt.Sprintf("%.4f %.4f %.6f", first.X-size*at[first.ID].X, first.Y+size*at[first.ID].Y, size)
}

func (s Spot) distance(other Spot) float64 { return math.Hypot(s.X-other.X, s.Y-other.Y) }

// FoundKind is a kind of finding to choose.
type FoundKind struct{ Kind, Name string }

// Founds are the kinds of findings.
func (f Frame) Founds() []FoundKind {
	var all []FoundKind
	for _, k := range run.Founds {
		all = append(all, FoundKind{string(k), f.Text().Seen.Names[string(k)]})
	}
	return all
}

// ToMeasure are the values that the file asks for, at each of their places.
func (v RunView) ToMeasure() []SeenAt {
	all := v.toMeasure("", "", v.Run.Measures)
	for i, one := range all {
		for _, st := range v.Joint.joint.Stations {
			if st.Label != "" && st.Label != st.ID {
				all[i].Name = strings.Replace(one.Name, " · "+st.ID+" · ", " · "+st.ID+" ("+st.Label+") · ", 1)
			}
			if all[i].Name != one.Name {
				break
			}
		}
	}
	return all
}

// ToMeasure are those of the machine, and of its joints.
func (v JobView) ToMeasure() []SeenAt {
	all := v.toMeasure("", "", v.Job.Measures)
	for _, j := range v.Job.Joints {
		all = append(all, v.toMeasure(j.Of, j.Title, j.Measures)...)
	}
	return all
}

// toMeasure are values at each of their places, of a joint as it is called there.
func (f Frame) toMeasure(joint, called string, values []measure.Value) []SeenAt {
	var all []SeenAt
	for _, v := range values {
		places := v.At
		if len(places) == 0 {
			places = []measure.Place{{}}
		}
		for _, p := range places {
			c := chosen{Joint: joint, Measure: v.What, Unit: string(v.Unit), Place: &p}
			if p == (measure.Place{}) {
				c.Place = nil
			}
			name := words.Row(called, v.What, p.Name(), cmp.Or(f.Words.Figure(v.Limits()), string(v.Unit)))
			all = append(all, SeenAt{c.fields(), name, string(v.Unit), v.Shims != nil})
		}
	}
	return all
}

// readLine says what was read and what it comes to.
func (f Frame) readLine(value, unit string, r measure.Result) string {
	t := f.Text().Seen
	if unit == "" {
		unit = string(r.Read.Unit)
	}
	limits, outside := "", ""
	if r.Limits != "" {
		limits = fmt.Sprintf(t.Limits, f.Words.Figure(r.Limits))
	}
	if r.Verdict.Outside() {
		outside = t.Outside
	}
	shim := ""
	for _, found := range r.Findings() {
		if found.Code != measure.Outside {
			shim = f.Words.Say(found)
		}
	}
	return words.Row(f.Words.Figure(strings.TrimSpace(value+" "+unit)), outside, limits, shim)
}

// PlacingView is the part of a form where a place on a joint is chosen: the picture to
// tap, with what was found there already, and the places by name. It is at
// /jobs/ID/places/JOINT.
type PlacingView struct {
	Frame
	Joint    Joint
	Findings []run.Entry // of the joint, in the order of their letters
	Letters  []string
}

// Placing writes it.
func Placing(w io.Writer, v PlacingView) error { return write(w, "placing", v) }

// Part is the joint with a flag at each finding.
func (v PlacingView) Part() Part {
	part := AtRest(v.Frame, v.Joint)
	for i, e := range v.Findings {
		if at, placed := v.Joint.spotOf(e.Place); placed {
			part.Flags = append(part.Flags, Flag{at, v.Letters[i]})
		}
	}
	return part
}

// Lines say what was found, by its letters.
func (v PlacingView) Lines() []string {
	t := v.Text()
	var all []string
	for i, e := range v.Findings {
		what := t.Seen.Names[string(e.Found)] + t.Trouble.Names[string(e.Trouble)]
		all = append(all, words.Row("▲ "+v.Letters[i], e.Place.Measured().Name(), what, e.Note, fmt.Sprintf(t.Run.StateBy, e.Who, v.when(e.Time))))
	}
	return all
}

// spotOf finds a place in the picture; placed is false for the whole part.
func (j Joint) spotOf(p *run.Place) (at Spot, placed bool) {
	if p == nil {
		return Spot{}, false
	}
	for _, m := range j.Marks {
		if m.ID == p.Fastener {
			return Spot{m.X, m.Y}, true
		}
	}
	place, known := j.spots[p.Measured().Name()]
	if p.At != nil {
		place, known = Spot{p.At[0], p.At[1]}, true
	}
	var x, y, size float64
	if _, err := fmt.Sscan(j.Scale, &x, &y, &size); err != nil {
		return Spot{}, false
	}
	return Spot{x + size*place.X, y - size*place.Y}, known
}
