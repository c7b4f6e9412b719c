package png

import (
	"image"
	"image/draw"
	stdpng "image/png"
	"io"
	"strconv"
	"testing"
	"time"

	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/stopwatch"
)

// fastest returns the shortest of several runs: other work on the machine can
// only add time.
func fastest(runs int, do func()) time.Duration {
	least := time.Duration(1<<63 - 1)
	for range runs {
		start := time.Now()
		do()
		least = min(least, time.Since(start))
	}
	return least
}

// reference encodes an empty white A4 page at 300 dpi with image/png. Times are
// reported relative to it, so that they are valid on any machine.
func reference() func() {
	blank := image.NewRGBA(image.Rect(0, 0, 2480, 3508))
	draw.Draw(blank, blank.Rect, image.White, image.Point{}, draw.Src)
	return func() { _ = stdpng.Encode(io.Discard, blank) }
}

func write(t testing.TB, page scene.Page, dpi int) func() {
	return func() {
		if err := Write(io.Discard, page, dpi); err != nil {
			t.Fatal(err)
		}
	}
}

func BenchmarkReference(b *testing.B) {
	encode := reference()
	for b.Loop() {
		encode()
	}
}

func BenchmarkCard(b *testing.B) {
	page := scenetest.Card().Pages[0]
	least := fastest(5, reference())
	do := write(b, page, 300)
	b.ReportAllocs()
	best := time.Duration(1<<63 - 1)
	for b.Loop() {
		best = min(best, fastest(1, do))
	}
	b.ReportMetric(float64(best)/float64(least), "best/reference")
	b.ReportMetric(float64(size(b, func(w io.Writer) error { return Write(w, page, 300) }))/float64(plainBytes(b, page, 300)), "bytes/plain")
}

func BenchmarkMarks(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10000} {
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			do := write(b, scenetest.Marks(n).Pages[0], 300)
			for b.Loop() {
				do()
			}
		})
	}
}

// BenchmarkSpeedLimit limits the card to 0.4 of the reference; on a quiet
// machine it takes 0.30 to 0.34. It is not a test, because other work on the
// machine would decide the result.
func BenchmarkSpeedLimit(b *testing.B) {
	page := scenetest.Card().Pages[0]
	const most = 0.4
	encode, do := reference(), write(b, page, 300)
	blank, card := fastest(1, encode), fastest(1, do)
	ratio := 1e9
	// Other load may affect only one side: both alternate, many times before
	// the card is found too slow.
	for round := 0; round < 60 && (round < 5 || ratio > most); round++ {
		blank, card = min(blank, fastest(1, encode)), min(card, fastest(1, do))
		ratio = float64(card) / float64(blank)
	}
	b.Logf("the card takes %v, %.2f of a blank page", card, ratio)
	if ratio > most {
		b.Errorf("the card takes %.2f of a blank page encoded plainly: at most %.2f is allowed", ratio, most)
	}
}

func TestBytes(t *testing.T) {
	if stopwatch.Raced {
		t.Skip("gg's own text takes half a minute under the race detector")
	}
	page := scenetest.Card().Pages[0]
	got := size(t, func(w io.Writer) error { return Write(w, page, 300) })
	naive := plainBytes(t, page, 300)
	t.Logf("%d bytes against %d", got, naive)
	if 2*got >= naive {
		t.Errorf("the card takes %d bytes: it must be under half of the %d that gg and image/png need", got, naive)
	}
}

// BenchmarkSpeedLimitOfGrowth: ten times the marks may take ten times as long,
// plus half for noise.
func BenchmarkSpeedLimitOfGrowth(b *testing.B) {
	const most = 15
	few, many := time.Hour, time.Hour
	thousand, more := write(b, scenetest.Marks(1000).Pages[0], 150), write(b, scenetest.Marks(10000).Pages[0], 150)
	ratio := 1e9
	for round := 0; round < 20 && (round < 2 || ratio > most); round++ {
		few, many = min(few, fastest(3, thousand)), min(many, fastest(1, more))
		ratio = float64(many) / float64(few)
	}
	b.Logf("1,000 marks %v, 10,000 marks %v", few, many)
	if ratio > most {
		b.Errorf("10,000 marks take %.1f times as long as 1,000: at most %d is allowed", ratio, most)
	}
}
