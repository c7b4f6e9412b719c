package overhaul

import (
	"slices"
	"strings"

	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

// Fasteners are the fasteners of one size over all joints.
type Fasteners struct {
	plan.Kind // the first that is met
	Count     int
	In        []Joint
}

// Fasteners counts the fasteners over all joints: those that are used once
// first, since they have to be bought, then by size as they are met. Like
// fasteners of different joints are counted together.
func (o Overhaul) Fasteners() []Fasteners {
	var all []Fasteners
	for _, j := range o.Joints() {
		for _, k := range j.Kinds {
			all = count(all, j, k)
		}
	}
	slices.SortStableFunc(all, func(a, b Fasteners) int { return reuseRank(a.Reuse) - reuseRank(b.Reuse) })
	return all
}

func reuseRank(r plan.Reuse) int {
	return slices.Index([]plan.Reuse{plan.ReuseOnce, plan.ReuseInspect, plan.ReuseUnknown, plan.ReuseYes}, r)
}

func count(all []Fasteners, j Joint, k plan.Kind) []Fasteners {
	i := slices.IndexFunc(all, func(f Fasteners) bool { return f.like(k) })
	if i < 0 {
		i, all = len(all), append(all, Fasteners{Kind: k})
	}
	all[i].Count += j.Count(k.Name)
	if n := len(all[i].In); n == 0 || all[i].In[n-1].Number != j.Number {
		all[i].In = append(all[i].In, j)
	}
	return all
}

func (f Fasteners) like(k plan.Kind) bool {
	return f.ThreadName() == k.ThreadName() && f.Length == k.Length && f.Class == k.Class && f.HeadForm == k.HeadForm &&
		f.Stud() == k.Stud() && f.NutAcross == k.NutAcross && f.Reuse == k.Reuse
}

// Supply is a gasket, sealant or lubricant with the joints that need it, or
// what of a part is new.
type Supply struct {
	What  string
	Count int // of gaskets; 0 where it is not counted
	In    []Joint
	Part  string // that it belongs to, where it is of no joint
}

// Gaskets lists the new gaskets of all joints.
func (o Overhaul) Gaskets() []Supply {
	all := o.supplies(func(j Joint) []string { return j.Task.Gaskets })
	for i := range all {
		all[i].Count = len(all[i].In)
	}
	return all
}

// NewParts lists what of the parts between the joints is new.
func (o Overhaul) NewParts() []Supply {
	var all []Supply
	for _, s := range o.Tasks {
		for _, what := range s.New {
			all = append(all, Supply{What: what, Part: s.Part})
		}
	}
	return all
}

// ByManual lists the parts that go back by figures of the maker's manual, in the
// order of building.
func (o Overhaul) ByManual() []Task {
	return slices.DeleteFunc(o.TasksOf(plan.CautionTighten), func(t Task) bool { return len(t.LookUp()) == 0 })
}

// LookUp lists what the manual is asked for when the part goes back.
func (t Task) LookUp() []string { return slices.Concat(t.Manual, t.Figures) }

// Sealants lists the sealants of all joints, without those of which the file
// says that there is none.
func (o Overhaul) Sealants() []Supply {
	return o.supplies(func(j Joint) []string {
		switch strings.ToLower(j.Task.Sealant) {
		case "", "none", "no":
			return nil
		}
		return []string{j.Task.Sealant}
	})
}

// Lubricants lists what the fasteners of all joints are oiled with.
func (o Overhaul) Lubricants() []Supply {
	return o.supplies(func(j Joint) (names []string) {
		for _, k := range j.Kinds {
			if k.Lubricant != "" && !screw.NothingOn(k.Lubricant) && !slices.Contains(names, k.Lubricant) {
				names = append(names, k.Lubricant)
			}
		}
		return names
	})
}

// supplies collects what each joint needs, as it is first met.
func (o Overhaul) supplies(of func(Joint) []string) []Supply {
	var all []Supply
	for _, j := range o.Joints() {
		for _, what := range of(j) {
			i := slices.IndexFunc(all, func(s Supply) bool { return s.What == what })
			if i < 0 {
				i, all = len(all), append(all, Supply{What: what})
			}
			all[i].In = append(all[i].In, j)
		}
	}
	return all
}
