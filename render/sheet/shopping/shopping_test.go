package shopping_test

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"drawdown/render/font"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/sheet/shopping"
	"drawdown/sequence/run/teardown"
)

// engine is a list for the P4 with a number of parts.
func engine(parts int) shopping.List {
	l := shopping.List{ID: "J3", Title: "Strip and rebuild of the P4", Machine: "Fernhollow P4 pump engine", Number: "P4-0117", Order: "A-31", Supplies: []teardown.Supply{
		{Sort: teardown.Bolt, What: "main", Size: "M10×1.5 × 120 mm", Class: "10.9", Count: 11, Ready: 10, Joints: []string{"p4-head"}, Condemned: []string{"p4-head M3"}},
		{Sort: teardown.Gasket, What: "head gasket", Count: 1, Ready: 1, Joints: []string{"p4-head"}},
		{Sort: teardown.NewPart, What: "rear shaft seal", Part: "rear shaft seal"},
		{Sort: teardown.Sealant, What: "liquid sealant", Joints: []string{"p4-timing-cover", "p4-sump"}},
		{Sort: teardown.Lubricant, What: "engine oil", Joints: []string{"p4-head", "p4-cam-caps"}},
	}}
	for n := range parts {
		l.Supplies = append(l.Supplies, teardown.Supply{Sort: teardown.NewPart, What: fmt.Sprint("shell ", n+1), Part: "crankshaft"})
	}
	return l
}

// Short, long and empty lists on every paper in every language: no layout
// fault, nothing under 2 mm, and every supply is listed.
func TestLayouts(t *testing.T) {
	t.Parallel()
	for n, l := range []shopping.List{engine(0), engine(70), {ID: "J1", Title: "Cover"}} {
		for _, ask := range sheettest.Requests(n) {
			document := shopping.Document(l, ask)
			sheettest.Check(t, l.Title, ask, document.Pages)
			said := scenetest.Said(document.Pages...)
			for _, s := range l.Supplies {
				if s.Sort == teardown.NewPart && !strings.Contains(said, s.What) {
					t.Errorf("%s on %s does not stand there", s.What, ask.Paper.Name)
				}
			}
			if len(l.Supplies) == 0 && !strings.Contains(said, ask.Words.Page.Shopping.Nothing) {
				t.Error("an empty list does not say so")
			}
			for _, text := range scenetest.Texts(document.Pages...) {
				if text.Size*font.CapHeight < 2 {
					t.Errorf("%q is %.2f mm high", text.Content, text.Size*font.CapHeight)
				}
			}
		}
	}
}

// The golden scene is our own output, inspected by eye.
func TestGoldenScene(t *testing.T) {
	scenetest.Golden(t, filepath.Join("testdata", "p4-engine.scene"), shopping.Document(engine(3), sheettest.English(sheet.Papers[1])))
}

// The table has a line for each supply, and no cell that a spreadsheet would
// evaluate.
func TestCSV(t *testing.T) {
	list := append(engine(0).Supplies[:2:2], teardown.Supply{Sort: teardown.NewPart, What: "=1+1", Part: "rotor, front"})
	want := `sort,what,size,class,count,ready,joints,part,condemned
fastener,main,M10×1.5 × 120 mm,10.9,11,10,p4-head,,p4-head M3
gasket,head gasket,,,1,1,p4-head,,
part,'=1+1,,,,0,,"rotor, front",
`
	if got := string(shopping.CSV(list)); got != want {
		t.Errorf("%s", got)
	}
}
