package card_test

import (
	"bytes"
	"fmt"
	"image"
	stdpng "image/png"
	"strconv"
	"strings"
	"testing"
	"time"

	"drawdown/render/png"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
)

// BenchmarkCardPicture paints the card of the head at 300 dpi. It reports its
// time relative to R, the time that the standard encoder takes for a blank RGBA
// page of that size in the same run.
func BenchmarkCardPicture(b *testing.B) {
	document, _ := card.Document(planOf(b, "p4-head"), card.TightenSide, sheettest.English(sheettest.Paper(b, "a4")))
	blank := image.NewRGBA(image.Rect(0, 0, 2480, 3508))
	var reference, card time.Duration
	var size int
	for b.Loop() {
		var out bytes.Buffer
		begin := time.Now()
		if err := stdpng.Encode(&out, blank); err != nil {
			b.Fatal(err)
		}
		reference += time.Since(begin)
		out.Reset()
		begin = time.Now()
		if err := png.Write(&out, document.Pages[0], 300); err != nil {
			b.Fatal(err)
		}
		card += time.Since(begin)
		size = out.Len()
	}
	b.ReportMetric(float64(card)/float64(reference), "R")
	b.ReportMetric(float64(size)/1000, "kB")
}

// BenchmarkCardGrowth lays out cards with increasing numbers of fasteners. The
// time per fastener should stay constant.
func BenchmarkCardGrowth(b *testing.B) {
	for _, columns := range []int{10, 32, 100} {
		n := columns * columns
		p := planOf(b, fmt.Sprintf("drawdown: 1\ntitle: Plate\nkinds: {b: {thread: M8}}\nfasteners:\n  - grid: {columns: %d, rows: %d, pitch: [60, 55], id: M}\ntighten: {stages: [{torque: 20 N·m}], source: works manual}\n", columns, columns))
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			for b.Loop() {
				card.Document(p, card.BothSides, sheettest.English(sheettest.Paper(b, "a4")))
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/float64(n), "µs/fastener")
		})
	}
}

// manyStages is a part with the given numbers of stages and cautions.
func manyStages(stages, cautions int) string {
	var b strings.Builder
	b.WriteString("drawdown: 1\ntitle: Many stages\nkinds: {b: {thread: M8}}\nfasteners:\n  - circle: {count: 12, diameter: 400, id: M}\ntighten:\n  stages:\n")
	for n := range stages {
		fmt.Fprintf(&b, "    - {torque: %d N·m, note: a note that runs on for a while}\n", 20+2*n)
	}
	b.WriteString("  source: works manual\ncautions:\n")
	for n := range cautions {
		fmt.Fprintf(&b, "  - Caution %d in some words that take the line a good way along the paper\n", n+1)
	}
	return b.String()
}

// BenchmarkCardOfManyStages lays out a card of 33 stages and 60 cautions, in
// portrait and landscape. Most of the time goes into the search for a layout.
func BenchmarkCardOfManyStages(b *testing.B) {
	p, paper := planOf(b, manyStages(33, 60)), sheettest.Paper(b, "a4")
	b.Run("upright", func(b *testing.B) {
		for b.Loop() {
			card.Document(p, card.BothSides, sheettest.English(paper))
		}
	})
	b.Run("on its side", func(b *testing.B) {
		for b.Loop() {
			card.Document(p, card.BothSides, sheettest.English(paper.Landscape()))
		}
	})
}
