package book

import (
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/measure"
)

// values has a row for each value of the whole machine, to be filled in before the
// teardown and after the first run. Those of a joint are on its condition sheet.
func (b *binder) values(run *sheet.Run, _ found) {
	w, c := b.w, b.ask.Words.Condition
	sentence(run, w.ValuesSay)
	t := sheet.Table{Columns: []sheet.Column{
		{Head: words.Capital(c.Value), Share: 4}, {Head: words.Capital(c.Station), Share: 2.2}, {Head: words.Capital(c.Limit), Share: 3},
		{Head: w.MeasuredBefore, Share: 3}, {Head: w.MeasuredAfter, Share: 3},
	}, Ruled: true}
	for _, v := range b.o.Measures {
		places := v.At
		if len(places) == 0 {
			places = []measure.Place{{}}
		}
		for _, at := range places {
			t.Rows = append(t.Rows, row(v.What, at.Name(), b.ask.Words.Figure(v.Limits()), "", ""))
		}
	}
	t.Draw(run)
}
