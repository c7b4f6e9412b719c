package job

import (
	"cmp"
	"io"

	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/patterns/table"
	"drawdown/render"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet/handout"
	"drawdown/sequence/exercise"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

// Graded is one student's answer, as in the table and as graded.
type Graded struct {
	Answer table.Answer
	handout.Graded
}

// Grade grades a table of answers for the parts that a request makes, by the
// rules of the trade. A row that cannot be read is not graded; the problems
// give the reason.
func Grade(p plan.Plan, ask HandoutRequest, path string, stdin io.Reader) ([]Graded, problem.List, error) {
	sheets, err := sheetsOf(p, ask)
	if err != nil {
		return nil, nil, err
	}
	from, err := source.Open(path, stdin, source.MostBytes)
	if err != nil {
		return nil, nil, err
	}
	from.Printable = font.Missing
	answers, problems := table.ReadAnswers(from, len(sheets), func(sheet int, order string) error {
		_, err := judge.ReadList(sheets[sheet-1].Plan.Joint, order)
		return err
	})
	var graded []Graded
	for _, answer := range answers {
		sheet := sheets[max(answer.Sheet, 1)-1] // the first if an unreadable row names none
		grade, err := gradeOf(sheet.Plan, answer, ask.side())
		if err != nil {
			return nil, nil, err
		}
		graded = append(graded, Graded{answer, handout.Graded{Student: cmp.Or(answer.Student, "?"), Sheet: sheet, Line: answer.Line, Grade: grade}})
	}
	return graded, problems, nil
}

func gradeOf(p plan.Plan, answer table.Answer, side judge.Side) (exercise.Grade, error) {
	switch {
	case len(answer.Unread) > 0:
		return exercise.Grade{Outcome: exercise.Unread}, nil
	case answer.Order == "":
		return exercise.Grade{Outcome: exercise.NoAnswer}, nil
	}
	order, err := judge.ReadList(p.Joint, answer.Order)
	if err != nil {
		return exercise.Grade{}, err
	}
	in := judge.ForPlan(p, side, order)
	in.Nearest = problem.Nearest
	return exercise.GradeOf(in), nil
}

// OfOtherParts reports whether the answers may be for other parts.
func OfOtherParts(graded []Graded) bool {
	var grades []exercise.Grade
	for _, g := range graded {
		grades = append(grades, g.Grade)
	}
	return exercise.OfOtherParts(grades)
}

// GradedSheets draws half a page for each student who gave an answer, and the
// summary of the class in a separate file.
func GradedSheets(p plan.Plan, ask HandoutRequest, graded []Graded) ([]render.File, error) {
	var all []handout.Graded
	for _, g := range graded {
		all = append(all, g.Graded)
	}
	var files []render.File
	for _, one := range []struct {
		stem string
		doc  scene.Document
	}{{p.Name + "-marked", handout.Feedback(all, ask.sheets())}, {p.Name + "-class", handout.Summary(all, ask.sheets())}} {
		if len(one.doc.Pages) == 0 {
			continue // nobody gave an answer
		}
		made, err := ask.files(one.doc, one.stem, "", p.Date)
		if err != nil {
			return nil, err
		}
		files = append(files, made...)
	}
	return files, nil
}
