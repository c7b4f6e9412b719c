package drafts

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"drawdown/patterns"
	"drawdown/patterns/edit"
	"drawdown/render/page"
	"drawdown/render/page/editpage"
	"drawdown/render/words"
)

// cover is a cover with fasteners listed one by one, in rows.
func cover(count int) string {
	var b strings.Builder
	b.WriteString("drawdown: 1\ntitle: Cover\nkinds: {main: {thread: M8, class: \"8.8\"}}\nfasteners:\n")
	for i := range count {
		fmt.Fprintf(&b, "  - {id: M%d, at: [%d, %d], kind: main}\n", i+1, i%20*40, i/20*40)
	}
	b.WriteString("tighten: {stages: [{torque: 20 N·m}]}\n")
	return b.String()
}

// BenchmarkDrag moves one fastener and draws all that the page shows.
func BenchmarkDrag(b *testing.B) {
	for _, count := range []int{40, 200} {
		b.Run(fmt.Sprint(count), func(b *testing.B) {
			from := patterns.FromBytes("cover.yaml", []byte(cover(count)))
			f := page.Frame{Words: words.English()}
			for i := 0; b.Loop(); i++ {
				change, err := Made(from, Ask{Operations: []edit.Operation{{Do: edit.Nudge, IDs: []string{"M7"}, By: &[2]float64{0, 0.1}}}})
				if err != nil {
					b.Fatal(err)
				}
				from.Data, _ = change.Apply(from.Data)
				d, err := Of(from, "cover", f)
				if err != nil {
					b.Fatal(err)
				}
				var text bytes.Buffer
				if editpage.WriteDraft(&text, d) != nil || editpage.WritePicture(&text, d) != nil {
					b.Fatal("not drawn")
				}
			}
		})
	}
}
