package plan

import (
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// What a file leaves open about springs under a part.
const (
	CapsUnstated     finding.Code = "plan caps unstated"      // clusters: the text that states it, rises: by its own stages
	CapsSprungAlone  finding.Code = "plan caps sprung alone"  // clusters: without the key, of: number of clusters with it; unloaded
	CapsAllUnloaded  finding.Code = "plan caps all unloaded"  // unloaded: the text for each cluster, rises: by its own stages
	SpringsTaken     finding.Code = "judged springs taken"    // unloaded: the text for clusters without springs
	SpringsUnknown   finding.Code = "judged springs unknown"  // clusters: the text that states it
	SpringsAllDenied finding.Code = "judged springs all none" // unloaded: the text for each cluster
)

const sayClusters keyed = "clusters: [{name: cap 1, of: [C1, C2]}]"

// Words for a camshaft in the languages of the sheets. Parts mounted on one, or
// over it, have no springs under their bolts.
var (
	camBegins  = []string{"camshaft", "nockenwelle"}
	camWords   = []string{"cam", "cams", "cames", "levas"}
	capWords   = []string{"cap", "caps", "lagerdeckel", "chapeau", "chapeaux", "sombrerete", "sombreretes"}
	besideCams = []string{"side", "seite", "côté", "lado", "cover", "sprocket", "gear", "pulley", "wheel", "sensor", "rad", "haube", "couvercle", "pignon", "capteur", "tapa", "piñón", "polea"}
)

// namesCamshaft reports whether a text means a camshaft, and not a part on one
// or over it.
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

// isCamshaft reports whether the title, kinds or clusters of a file name a
// camshaft, or name caps while the cautions mention one. Labels do not count,
// because they may name what is beside the part.
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

// allUnloaded reports whether the file states that no cap is under spring load.
func allUnloaded(clusters []geometry.Cluster) bool {
	return !slices.ContainsFunc(clusters, func(c geometry.Cluster) bool { return !c.Unloaded })
}

// CapsUnjudged finds a camshaft whose file does not say where springs push, or
// says that none do. The file's own loosening stages may let it rise evenly,
// but it is still tightened without rounds.
func (in Input) CapsUnjudged() (f finding.Finding, found bool) {
	if !allUnloaded(in.Joint.Clusters) || !isCamshaft(in.Heading, in.Kinds, in.Joint, in.Cautions) {
		return f, false
	}
	if len(in.Joint.Clusters) == 0 {
		return finding.Warned(CapsUnstated, finding.Values{"clusters": string(sayClusters), "rises": in.risesEvenly()}).From(finding.CommonPractice), true
	}
	return finding.Warned(CapsAllUnloaded, finding.Values{"unloaded": string(sayUnloaded), "rises": in.risesEvenly()}).From(finding.CommonPractice), true
}

// CapsSprungAlone finds clusters of a part other than a camshaft that are
// assumed to be under spring load, because the file rules it out only for most
// of the others.
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

// risesEvenly reports whether the file's own stages suit a part under spring
// load.
func (in Input) risesEvenly() bool {
	var kinds []string
	for _, k := range in.Kinds {
		if in.has(k.Name) {
			kinds = append(kinds, k.Name)
		}
	}
	return len(in.Loosen) > 0 && len(in.lifts(kinds)) == 0
}

// coversSprings reports whether springs could be judged; applies is false if
// the part has nothing to do with them.
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
