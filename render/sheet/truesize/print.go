package truesize

import (
	"fmt"
	"strings"

	"drawdown/render/scene"
	"drawdown/render/sheet/tile"
)

// Print lays a drawing out over sheets. The legend is asked for with how many
// words found no room.
func Print(draw func(tile.Seams) *Plate, ask tile.Sheets, legend func(noRoom int) []string) (pages []scene.Page, notes []string, err error) {
	ask.Legend = legend(0)
	again := func(s tile.Seams) tile.Contents { return draw(s).Drawing }
	pages, notes, d, err := tile.Join(again, ask)
	if n := len(d.NoRoom); n > 0 {
		ask.Legend = legend(n)
		pages, notes, d, err = tile.Join(again, ask)
	}
	return pages, append(Notes(d.NoRoom), notes...), err
}

// mostNamed is how many words a note names.
const mostNamed = 8

// Notes tell which words found no room.
func Notes(noRoom []string) []string {
	n := len(noRoom)
	switch {
	case n == 0:
		return nil
	case n <= mostNamed:
		return []string{fmt.Sprintf("%d words found no room: %s", n, strings.Join(noRoom, ", "))}
	}
	return []string{fmt.Sprintf("%d words found no room: %s and %d more", n, strings.Join(noRoom[:mostNamed], ", "), n-mostNamed)}
}
