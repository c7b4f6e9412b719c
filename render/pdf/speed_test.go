package pdf

import (
	"io"
	"strconv"
	"testing"
	"time"

	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/stopwatch"
)

func write(t testing.TB, doc scene.Document) func() {
	return func() {
		if err := Write(io.Discard, doc, time.Time{}); err != nil {
			t.Fatal(err)
		}
	}
}

// book is the card repeated for a number of pages.
func book(pages int) scene.Document {
	doc := scenetest.Card()
	for len(doc.Pages) < pages {
		doc.Pages = append(doc.Pages, doc.Pages[0])
	}
	return doc
}

func BenchmarkCard(b *testing.B) {
	do := write(b, scenetest.Card())
	b.ReportAllocs()
	for b.Loop() {
		do()
	}
}

func BenchmarkBook(b *testing.B) {
	do := write(b, book(1000))
	single := stopwatch.Fastest(5, write(b, scenetest.Card()))
	best := time.Duration(1<<63 - 1)
	for b.Loop() {
		best = min(best, stopwatch.Fastest(1, do))
	}
	b.ReportMetric(float64(best)/1000/float64(single), "page/single")
}

func BenchmarkMarks(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10000} {
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			do := write(b, scenetest.Marks(n))
			for b.Loop() {
				do()
			}
		})
	}
}

// BenchmarkSpeedLimit limits a page of a book of 1,000 to 0.1 of a file of one
// page. It is not a test, because other work on the machine would decide the
// result.
func BenchmarkSpeedLimit(b *testing.B) {
	const most = 0.1
	single, whole := time.Duration(1<<63-1), time.Duration(1<<63-1)
	card, thousand := write(b, scenetest.Card()), write(b, book(1000))
	ratio := 1e9
	// Other load may affect only one side: both alternate.
	for round := 0; round < 8 && (round < 2 || ratio > most); round++ {
		single, whole = min(single, stopwatch.Fastest(5, card)), min(whole, stopwatch.Fastest(1, thousand))
		ratio = float64(whole) / 1000 / float64(single)
	}
	b.Logf("a file of one card takes %v, a page of 1,000 takes %.3f of that", single, ratio)
	if ratio > most {
		b.Errorf("a page of 1,000 takes %.3f of a file of its own: at most %.1f is allowed", ratio, most)
	}
}

// BenchmarkSpeedLimitOfGrowth: ten times the marks may take ten times as long,
// plus half for noise.
func BenchmarkSpeedLimitOfGrowth(b *testing.B) {
	const most = 15
	few, many := time.Hour, time.Hour
	thousand, more := write(b, scenetest.Marks(1000)), write(b, scenetest.Marks(10000))
	ratio := 1e9
	for round := 0; round < 20 && (round < 2 || ratio > most); round++ {
		few, many = min(few, stopwatch.Fastest(3, thousand)), min(many, stopwatch.Fastest(1, more))
		ratio = float64(many) / float64(few)
	}
	b.Logf("1,000 marks %v, 10,000 marks %v", few, many)
	if ratio > most {
		b.Errorf("10,000 marks take %.1f times as long as 1,000: at most %d is allowed", ratio, most)
	}
}
