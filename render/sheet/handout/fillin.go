package handout

import (
	"slices"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
)

const (
	nameHeight = 12.0 // of the line for name, class and date
	whyHeight  = 19.0 // of the question below the list, with two lines to write on
	leastPart  = 60.0 // least height of the part on a sheet
	ruleIndent = 4.0
	captionAir = 2.0 // above and below the caption
)

// pages lays out the sheet: names and task, the part as large as possible, the
// list, and on a key the rules. A list that would take the part's space goes to
// the next page. lacking is the number of names that do not fit beside their
// marks.
func (s *fillIn) pages() (pages []scene.Page, notes []finding.Finding, lacking int) {
	run := sheet.NewRun(s.Paper, s.Words, s.heading(), s.Foot())
	if s.which == Blank {
		s.nameLine(run)
	}
	s.taskText(run)
	below := s.listHeight() + s.extraHeight()
	onFirst := run.Bottom-run.Y-below >= leastPart
	if !onFirst {
		below = 0
	}
	drawn := s.part(run.Pen, run.Y, run.Bottom-below)
	run.Y = run.Bottom - below
	if !onFirst {
		run.Turn()
	}
	s.list(run)
	s.extra(run)
	s.Missing.Note(len(drawn.Unplaced), len(s.side.Order))
	return run.Pages(s.name()), s.left(drawn), drawn.BesideLeftOut
}

func (s *fillIn) nameLine(run *sheet.Run) {
	p, y := run.Pen, run.Y+7
	shares := []float64{0.5, 0.25, 0.25}
	x := p.Left()
	for k, label := range []string{s.words.Name, s.words.Class, s.words.Date} {
		next := x + shares[k]*p.Paper.Content()
		end := next - 2
		if k == len(shares)-1 {
			end = p.Right()
		}
		p.Text(x, y, label)
		p.Rule(x+font.Width(label, scene.Regular, run.Pen.Paper.TextEm)+1.5, y+0.6, end, y+0.6, 0.25)
		x = next
	}
	run.Y += nameHeight
}

// taskText sets the task large enough to be read while the sheet is on the
// bench.
func (s *fillIn) taskText(run *sheet.Run) {
	how := run.Pen.Paper.Large()
	if s.Paper.Narrow() {
		how = run.Pen.Paper.Plain()
	}
	for _, text := range s.texts() {
		run.Y = how.Set(run.Pen, run.Pen.Left(), run.Y+4.2, how.Lines(text, s.Paper.Content())) - 3.2
	}
	run.Y++
}

func (s *fillIn) part(p *sheet.Pen, top, bottom float64) diagram.Drawing {
	req := diagram.Part{Plan: s.Plan, Beside: diagram.IDs(s.Plan.Joint), Front: p.Words.Sheet.Front, SmallEm: p.Paper.TextEm}
	switch {
	case s.named:
		req.Show, req.Words, req.Beside = diagram.Words, req.Beside, nil
	case s.which == Blank:
		req.Show = diagram.Blank
	default:
		req.Order, req.Called = s.side.Order, s.Plan.Called(s.side)
	}
	for lines := 1; ; {
		foot := bottom - 2*captionAir - float64(lines)*p.Paper.Line
		req.Box = scene.Box{Left: p.Left(), Top: top, Right: p.Right(), Bottom: foot}
		d := diagram.Draw(req)
		caption := diagram.NewLegend(req.KindNames(), s.reading(d), p.Paper.TextEm, p.Paper.Line, p.Left(), p.Right())
		if caption.Lines > lines { // make the drawing smaller
			lines = caption.Lines
			continue
		}
		p.Add(d.Items...)
		p.Add(caption.Below(d, bottom-captionAir)...)
		return d
	}
}

func (s *fillIn) reading(d diagram.Drawing) string {
	left := s.Words.NoRoomFor(d.Dropped)
	if s.which == Blank {
		return left
	}
	cast := sheet.CastNumbersOf(s.Plan, s.side, s.Words)
	return words.Text(cast.Large(), cast.Follow(d.Path), left)
}

// left reports what did not fit. A name that does not fit beside a number of
// the key is in its list.
func (s *fillIn) left(d diagram.Drawing) []finding.Finding {
	var notes []finding.Finding
	note := func(code finding.Code, values finding.Values) {
		values["sheet"], values["key"], values["paper"] = s.name(), s.which == Key, s.Paper.Name
		notes = append(notes, finding.Warned(code, values))
	}
	if n := len(d.Unplaced); n > 0 {
		note(BoltsWithoutRoom, finding.Values{"count": n, "of": len(s.side.Order)})
	}
	for _, word := range d.Dropped {
		note(LabelWithoutRoom, finding.Values{"label": word})
	}
	return notes
}

const (
	boxHeight = 11.0 // of a box in the list
	leastBox  = 11.0 // its width
	listHead  = 7.0
	listGap   = 3.0 // below a row
)

func (s *fillIn) rows() (across, rows int, width float64) {
	widest := leastBox
	if s.which == Key {
		for _, f := range s.Plan.Joint.Fasteners {
			widest = max(widest, font.Width(f.ID, scene.Bold, s.Paper.HeadEm)+2)
		}
	}
	n := len(s.side.Order)
	most := max(1, int(s.Paper.Content()/widest))
	rows = (n + most - 1) / most
	across = (n + rows - 1) / rows
	return across, rows, s.Paper.Content() / float64(across)
}

func (s *fillIn) listHeight() float64 {
	_, rows, _ := s.rows()
	return listHead + float64(rows)*(boxHeight+listGap)
}

func (s *fillIn) list(run *sheet.Run) {
	across, _, width := s.rows()
	run.Room(listHead + boxHeight + listGap)
	head := s.words.YourOrder
	if s.which == Key {
		head = s.words.KeyOrder
	}
	run.Pen.Head(run.Pen.Left(), run.Y+4, head)
	run.Y += listHead
	step := 0
	for row := range slices.Chunk(s.side.Order, across) {
		run.Room(boxHeight + listGap)
		for k, i := range row {
			step++
			p, x, id := run.Pen, run.Pen.Left()+float64(k)*width, s.Plan.Joint.Fasteners[i].ID
			p.Panel(x, run.Y, width, boxHeight, 0, scene.White, 0.3)
			p.Write(x+1, run.Y+3.2, run.Pen.Paper.TextEm, scene.Regular, scene.Start, scene.Black, strconv.Itoa(step))
			if s.which == Key {
				p.Write(x+width/2, run.Y+8.8, run.Pen.Paper.HeadEm, scene.Bold, scene.Middle, scene.Black, font.Fit(id, scene.Bold, run.Pen.Paper.HeadEm, width-1))
			}
		}
		run.Y += boxHeight + listGap
	}
}

func (s *fillIn) extra(run *sheet.Run) {
	run.Room(s.extraHeight())
	p := run.Pen
	if s.which == Blank {
		p.Text(p.Left(), run.Y+4, s.words.WhyFirst)
		from := p.Left() + font.Width(s.words.WhyFirst, scene.Regular, run.Pen.Paper.TextEm) + 1.5
		p.Rule(from, run.Y+4.6, p.Right(), run.Y+4.6, 0.25)
		p.Rule(p.Left(), run.Y+13.6, p.Right(), run.Y+13.6, 0.25)
		return
	}
	p.Head(p.Left(), run.Y+4, s.words.Rules)
	y := run.Y + 10
	for _, lines := range s.brokenRules() {
		p.Add(scene.Shape{Path: scene.Circle(p.Left()+1, y-1.1, 0.6), Fill: scene.Black})
		y = p.Lines(p.Left()+ruleIndent, y, lines) + 1
	}
}

func (s *fillIn) brokenRules() sheet.Broken {
	return s.Paper.BreakAll(rules(s.Plan, s.words), s.Paper.Content()-ruleIndent)
}

func (s *fillIn) extraHeight() float64 {
	if s.which == Blank {
		return whyHeight
	}
	return 8 + s.brokenRules().Height(s.Paper.Line)
}
