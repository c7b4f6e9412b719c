package job

import (
	"io"

	"drawdown/patterns/problem"
	"drawdown/patterns/table"
	"drawdown/render"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet/handout"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

// Marked is one student's answer with what it came to.
type Marked struct {
	table.Answer
	Report judge.Report
	mark   handout.Mark
}

// Mark marks a table of answers (a path, or - for stdin) for the parts that a
// request makes, by the rules of the trade. A row that cannot be read is
// not marked; the problems tell why. Where they stop the work nothing is marked. The error is for a table that could not be read at all.
func Mark(p plan.Plan, ask HandoutRequest, path string, stdin io.Reader) ([]Marked, problem.List, error) {
	tasks, err := Tasks(p, ask)
	if err != nil {
		return nil, nil, err
	}
	source, err := table.Open(path, stdin)
	if err != nil {
		return nil, nil, err
	}
	source.Printable = font.Missing
	answers, problems := table.ReadAnswers(source, len(tasks), func(sheet int, order string) error {
		_, err := judge.ReadList(tasks[sheet-1].Plan.Joint, order)
		return err
	})
	var marked []Marked
	for _, answer := range answers {
		if len(answer.Unread) > 0 {
			marked = append(marked, notMarked(tasks, answer))
			continue
		}
		one, err := markOne(tasks[answer.Sheet-1], answer, ask.Loosening)
		if err != nil {
			return nil, nil, err
		}
		marked = append(marked, one)
	}
	return marked, problems, nil
}

// notMarked is a row that cannot be read; it has the first sheet where its own is
// not known.
func notMarked(tasks []handout.Task, answer table.Answer) Marked {
	student := answer.Student
	if student == "" {
		student = "?"
	}
	return Marked{Answer: answer, mark: handout.Mark{
		Student: student, Task: tasks[max(answer.Sheet, 1)-1], Verdict: handout.NotMarked, Line: answer.Line,
	}}
}

func markOne(task handout.Task, answer table.Answer, loosening bool) (Marked, error) {
	side := judge.Tighten
	if loosening {
		side = judge.Loosen
	}
	if answer.Order == "" {
		return Marked{Answer: answer, mark: handout.Mark{Student: answer.Student, Task: task, Verdict: handout.NoAnswer}}, nil
	}
	order, err := judge.ReadList(task.Plan.Joint, answer.Order)
	if err != nil {
		return Marked{}, err
	}
	in := judge.ForPlan(task.Plan, side, order)
	in.Nearest = problem.Nearest
	m := Marked{Answer: answer, Report: judge.Order(in)}
	m.mark = handout.Mark{Student: answer.Student, Task: task, Order: order, Verdict: verdictOf(m.Report.Verdict)}
	for _, f := range m.Findings() {
		m.mark.Findings = append(m.mark.Findings, handout.Finding{Rule: string(f.Rule), IDs: f.IDs, Steps: f.Steps, Against: f.Against})
	}
	return m, nil
}

// Verdict sums the answer up in a word or two.
func (m Marked) Verdict() string { return string(m.mark.Verdict) }

// OtherParts says whether at least half of the answers name bolts that their
// parts lack, or leave some out: then they may be for other parts.
func OtherParts(marked []Marked) bool {
	given, not := 0, 0
	for _, m := range marked {
		switch m.mark.Verdict {
		case handout.NoAnswer, handout.NotMarked:
			continue
		case handout.NotWhole:
			not++
		}
		given++
	}
	return not > 0 && 2*not >= given
}

// Findings are those that there is something to mend in.
func (m Marked) Findings() []judge.Finding {
	var all []judge.Finding
	for _, f := range m.Report.Findings {
		if f.Severity != judge.Description {
			all = append(all, f)
		}
	}
	return all
}

func verdictOf(v judge.Verdict) handout.Verdict {
	switch v {
	case judge.Remarks:
		return handout.Remarks
	case judge.Departs:
		return handout.Wrong
	case judge.NotWhole:
		return handout.NotWhole
	}
	return handout.Right
}

// MarkedSheets draws a half page a student who gave an answer, and the summary of
// the class in a file of its own, in every format asked for.
func MarkedSheets(p plan.Plan, ask HandoutRequest, marked []Marked) ([]render.File, error) {
	sheets := handout.Request{Paper: ask.Paper, Words: ask.Words, Loosening: ask.Loosening}
	var marks []handout.Mark
	for _, m := range marked {
		marks = append(marks, m.mark)
	}
	var files []render.File
	for _, one := range []struct {
		stem string
		doc  scene.Document
	}{{p.Name + "-marked", handout.Feedback(marks, sheets)}, {p.Name + "-class", handout.Summary(marks, sheets)}} {
		if len(one.doc.Pages) == 0 {
			continue // nobody gave an answer
		}
		made, err := ask.files(one.doc, one.stem, dated(p.Date))
		if err != nil {
			return nil, err
		}
		files = append(files, made...)
	}
	return files, nil
}
