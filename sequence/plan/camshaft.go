package plan

import (
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// What a file leaves open of springs under a part.
const (
	CapsUnstated     finding.Code = "plan caps unstated"      // clusters: what a file says in its place, rises: by stages of its own
	CapsSprungAlone  finding.Code = "plan caps sprung alone"  // clusters: without the key, of: how many have it; unloaded
	CapsAllUnloaded  finding.Code = "plan caps all unloaded"  // unloaded: what a file says of each, rises: by stages of its own
	SpringsTaken     finding.Code = "judged springs taken"    // unloaded: what a file says where none presses
	SpringsUnknown   finding.Code = "judged springs unknown"  // clusters: what a file says in its place
	SpringsAllDenied finding.Code = "judged springs all none" // unloaded: what a file says of each
)

const sayClusters keyed = "clusters: [{name: cap 1, of: [C1, C2]}]"

// The words for a camshaft in the languages of the sheets. What sits on one, or
// over it, has no springs under its bolts.
var (
	camBegins  = []string{"camshaft", "nockenwelle"}
	camWords   = []string{"cam", "cams", "cames", "levas"}
	capWords   = []string{"cap", "caps", "lagerdeckel", "chapeau", "chapeaux", "sombrerete", "sombreretes"}
	besideCams = []string{"cover", "sprocket", "gear", "pulley", "wheel", "sensor", "rad", "haube", "couvercle", "pignon", "capteur", "tapa", "piñón", "polea"}
)

// namesCamshaft reports whether a text speaks of a camshaft, and not of what
// sits on one or over it.
func namesCamshaft(text string) bool {
	named := false
	for _, word := range wordsOf(text) {
		if slices.ContainsFunc(besideCams, func(end string) bool { return strings.HasSuffix(word, end) }) {
			return false
		}
		named = named || slices.Contains(camWords, word) || slices.ContainsFunc(camBegins, func(begin string) bool { return strings.HasPrefix(word, begin) })
	}
	return named
}

// isCamshaft reports whether a file calls its part, its kinds or its clusters
// by a camshaft, or calls them caps where its cautions speak of one. What its
// labels say may be of what lies beside it.
func isCamshaft(h Heading, kinds []Kind, j geometry.Joint, cautions []Caution) bool {
	names := []string{h.Title, h.Name}
	for _, k := range kinds {
		names = append(names, k.Name)
	}
	for _, c := range j.Clusters {
		names = append(names, c.Name)
	}
	warned := slices.ContainsFunc(cautions, func(c Caution) bool { return namesCamshaft(c.Text) })
	return slices.ContainsFunc(names, namesCamshaft) || warned && slices.ContainsFunc(names, namesCap)
}

func namesCap(text string) bool {
	return slices.ContainsFunc(wordsOf(text), func(word string) bool { return slices.Contains(capWords, word) })
}

func labelsCamshaft(j geometry.Joint) bool {
	return slices.ContainsFunc(j.Labels, func(l geometry.Label) bool { return namesCamshaft(l.Text) }) ||
		slices.ContainsFunc(j.Stations, func(s geometry.Station) bool { return namesCamshaft(s.Label) })
}

// allUnloaded reports whether a file denies every cap its spring.
func allUnloaded(clusters []geometry.Cluster) bool {
	return !slices.ContainsFunc(clusters, func(c geometry.Cluster) bool { return !c.Unloaded })
}

// CapsUnjudged finds a camshaft of which nothing says where springs press, or
// that is said to have none under it. Loosening stages of the file's own may let
// it rise evenly; it is then still tightened without rounds.
func (in Input) CapsUnjudged() (f finding.Finding, found bool) {
	if !allUnloaded(in.Joint.Clusters) || !isCamshaft(in.Heading, in.Kinds, in.Joint, in.Cautions) {
		return f, false
	}
	if len(in.Joint.Clusters) == 0 {
		return finding.Warned(CapsUnstated, finding.Values{"clusters": string(sayClusters), "rises": in.risesEvenly()}).From(finding.CommonPractice), true
	}
	return finding.Warned(CapsAllUnloaded, finding.Values{"unloaded": string(sayUnloaded), "rises": in.risesEvenly()}).From(finding.CommonPractice), true
}

// CapsSprungAlone finds the clusters of a part that is no camshaft on which springs
// are taken to press, since the file does not deny it as it does of most.
func (in Input) CapsSprungAlone() (f finding.Finding, found bool) {
	var names []string
	for _, c := range in.Joint.Clusters {
		if !c.Unloaded {
			names = append(names, c.Name)
		}
	}
	denied := len(in.Joint.Clusters) - len(names)
	if len(names) == 0 || denied <= len(names) || isCamshaft(in.Heading, in.Kinds, in.Joint, in.Cautions) {
		return f, false
	}
	return finding.Warned(CapsSprungAlone, finding.Values{"clusters": names, "of": denied, "unloaded": string(sayUnloaded)}), true
}

// risesEvenly reports whether the file has stages of its own that suit a part
// under springs.
func (in Input) risesEvenly() bool {
	var kinds []string
	for _, k := range in.Kinds {
		if in.has(k.Name) {
			kinds = append(kinds, k.Name)
		}
	}
	return len(in.Loosen) > 0 && len(in.lifts(kinds)) == 0
}

// coversSprings reports whether springs could be judged; false where the part has
// nothing to do with them.
func (p Plan) coversSprings() (f finding.Finding, judged, applies bool) {
	clusters := p.Joint.Clusters
	named := isCamshaft(p.Heading, p.Kinds, p.Joint, p.Cautions) || labelsCamshaft(p.Joint)
	switch {
	case len(clusters) == 0 && named:
		return finding.Noted(SpringsUnknown, finding.Values{"clusters": string(sayClusters)}), false, true
	case len(clusters) == 0:
		return f, false, false
	case allUnloaded(clusters) && named:
		return finding.Noted(SpringsAllDenied, finding.Values{"unloaded": string(sayUnloaded)}), false, true
	case !named && !slices.ContainsFunc(clusters, func(c geometry.Cluster) bool { return c.Unloaded }):
		return finding.Noted(SpringsTaken, finding.Values{"unloaded": string(sayUnloaded)}), false, true
	}
	return finding.Noted(SpringsJudged, nil), true, true
}
