package teardown

import (
	"slices"

	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// Sort is what something is that must be there for the rebuild.
type Sort string

const (
	Bolt      Sort = "fastener"
	Gasket    Sort = "gasket"
	NewPart   Sort = "part"
	Sealant   Sort = "sealant"
	Lubricant Sort = "lubricant"
)

// Supply is one thing that must be there for the rebuild, counted over all joints.
type Supply struct {
	Sort      Sort      `json:"sort"`
	What      string    `json:"what"` // in the words of the file
	Size      string    `json:"size,omitempty"`
	Class     string    `json:"class,omitempty"`
	Count     int       `json:"count,omitempty"`   // 0: as much as it takes
	Ready     int       `json:"ready"`             // of them; of what is not counted 1 for all
	Counted   bool      `json:"counted,omitempty"` // somebody said how many are there
	Fitted    *run.Mark `json:"fitted,omitempty"`  // who said that new ones are in
	Joints    []string  `json:"joints,omitempty"`
	Part      string    `json:"part,omitempty"`      // that it belongs to, where it is of no joint
	Condemned []string  `json:"condemned,omitempty"` // the fasteners that some of them replace
}

// Met says whether all of it is there.
func (s Supply) Met() bool { return s.Ready >= max(1, s.Count) }

// Size is what a kind of fastener is ordered by.
type Size struct {
	Kind  string `json:"kind"`
	Size  string `json:"size,omitempty"` // thread and length
	Class string `json:"class,omitempty"`
}

func sizesOf(p plan.Plan) (all []Size) {
	for _, k := range p.Kinds {
		size := k.ThreadName()
		if size != "" && k.Length > 0 && !k.Stud() {
			size += " × " + k.Labelled(k.Length)
		}
		all = append(all, Size{k.Name, size, k.Class})
	}
	return all
}

// suppliesOf lists what a machine needs beside its fasteners.
func suppliesOf(o overhaul.Overhaul) []Supply {
	var all []Supply
	add := func(sort Sort, list []overhaul.Supply) {
		for _, s := range list {
			one := Supply{Sort: sort, What: s.What, Count: s.Count, Part: s.Part}
			for _, j := range s.In {
				one.Joints = append(one.Joints, j.Name)
			}
			all = append(all, one)
		}
	}
	add(Gasket, o.Gaskets())
	add(NewPart, o.NewParts())
	add(Sealant, o.Sealants())
	add(Lubricant, o.Lubricants())
	return all
}

// supplies are those of the file, with how many are there.
func (s *State) supplies() []Supply {
	all := slices.Clone(s.work.Supplies)
	for i := range all {
		for _, e := range s.Ready() {
			switch pieces, counted := e.Value.Number(); {
			case e.Place != nil, e.Kind != "" && e.Kind != all[i].What:
			case counted && e.Kind != "":
				all[i].Ready += int(min(max(pieces, 0), mostPieces))
				all[i].Counted = true
			default:
				all[i].Ready = max(1, all[i].Count)
			}
		}
		all[i].Ready = min(all[i].Ready, max(1, all[i].Count))
		if e := s.fittedBy(all[i].What); e != nil && all[i].UsedOnce() {
			mark := markOf(e)
			all[i].Fitted, all[i].Ready = &mark, max(1, all[i].Count)
		}
	}
	return all
}

const mostPieces = 1e6

// ReadyFor gives the entries by which something is ready for a joint. Where all
// gaskets that the file names for it are there, its gasket is; where one is not, its
// gasket is counted as missing, and the tightening waits for it.
func (s *State) ReadyFor(of string) []run.Entry {
	ready := slices.DeleteFunc(s.Ready(), func(e run.Entry) bool { return e.Joint != "" && e.Joint != of })
	gaskets := gasketsOf(s.supplies(), of)
	one := run.Entry{ID: "gasket:" + of, Act: run.Ready, Kind: run.GasketKind}
	switch {
	case len(gaskets) == 0:
	case !slices.ContainsFunc(gaskets, func(g Supply) bool { return !g.Met() }):
		ready = append(ready, one)
	default:
		one.Value = "0"
		ready = append(ready, one)
	}
	return ready
}

// gasketsOf are the gaskets that the file names for a joint.
func gasketsOf(all []Supply, joint string) []Supply {
	return slices.DeleteFunc(slices.Clone(all), func(s Supply) bool { return s.Sort != Gasket || !slices.Contains(s.Joints, joint) })
}

// Named says whether a need is a gasket, or a sealant in its place, that the file lists
// by its name.
func (v View) Named(n Need) bool {
	sealant := func(s Supply) bool {
		return s.Sort == Sealant && s.What == n.Need.Gasket && slices.Contains(s.Joints, n.Joint)
	}
	return n.Need.Gasket != "" && (len(gasketsOf(v.Supplies, n.Joint)) > 0 || slices.ContainsFunc(v.Supplies, sealant))
}

// Shopping lists all that must be there: fasteners that are used once or replace a
// condemned one, by size, then what the file lists.
func (v View) Shopping() []Supply {
	var all []Supply
	for _, n := range v.Needs {
		if !v.Named(n) && n.Trouble != run.HoleThread {
			all = added(all, v.needed(n))
		}
	}
	return append(all, v.Supplies...)
}

// needed is a need as a supply.
func (v View) needed(n Need) Supply {
	one := Supply{Sort: Bolt, What: n.Kind, Count: n.Count, Ready: n.Ready, Joints: []string{n.Joint}}
	if n.Need.Gasket != "" {
		one.Sort, one.What = Gasket, n.Need.Gasket
	}
	if n.ID != "" {
		one.Condemned = []string{v.TitleOf(n.Joint) + " " + n.ID}
	}
	if n.Among {
		one.Count, one.Ready = 0, 0
	}
	for _, j := range v.Joints {
		for _, size := range j.Sizes {
			if j.Of == n.Joint && size.Kind == n.Kind {
				one.Size, one.Class = size.Size, size.Class
			}
		}
	}
	return one
}

// added counts a fastener to those of its size and class.
func added(all []Supply, one Supply) []Supply {
	i := slices.IndexFunc(all, func(s Supply) bool {
		return s.Sort == one.Sort && s.Size == one.Size && s.Class == one.Class && (s.Size != "" || s.What == one.What)
	})
	if i < 0 {
		return append(all, one)
	}
	all[i].Count += one.Count
	all[i].Ready += one.Ready
	if !slices.Contains(all[i].Joints, one.Joints[0]) {
		all[i].Joints = append(all[i].Joints, one.Joints...)
	}
	all[i].Condemned = append(all[i].Condemned, one.Condemned...)
	return all
}

// asksFor says whether a job asks for such a kind.
func (w Work) asksFor(kind string) bool {
	return kind == run.GasketKind || slices.ContainsFunc(w.Supplies, func(s Supply) bool { return s.What == kind }) ||
		slices.ContainsFunc(w.Joints, func(j Joint) bool {
			return slices.ContainsFunc(j.Kinds, func(k run.Kind) bool { return k.Name == kind })
		})
}

// askable lists what can be ready, for whoever asks for something else.
func (w Work) askable() []string {
	var all []string
	for _, j := range w.Joints {
		for _, k := range j.Kinds {
			all = append(all, k.Name)
		}
	}
	for _, s := range w.Supplies {
		all = append(all, s.What)
	}
	slices.Sort(all)
	return slices.Compact(all)
}
