package cli

import "drawdown/geometry/finding"

// What can go wrong with a call, beside what the rooms below find.
const (
	OutputNotWritten finding.Code = "output not written"   // why
	BatchFailed      finding.Code = "batch failed"         // failed, n, drawn
	ErrorsInFile     finding.Code = "batch errors"         // n
	NoWrenchList     finding.Code = "wrench list missing"  // file
	SameName         finding.Code = "cards of one name"    // clashes: each a SameCard
	SameCard         finding.Code = "card of two patterns" // patterns, name
)

// What can go wrong with a check of many files.
const EmptyFolder finding.Code = "folder without files" // folder, allowed: endings

// What can go wrong with a call of book or of handout.
const (
	WhichMachine  finding.Code = "book which machine"  //
	ExampleAlone  finding.Code = "book example alone"  // file
	BookNotDrawn  finding.Code = "book not drawn"      // why
	TableNotNamed finding.Code = "answers not named"   //
	NoTable       finding.Code = "answers missing"     // file
	GradeOrMake   finding.Code = "answers or sheets"   //
	SeedAlone     finding.Code = "handout seed alone"  //
	OneInputOnly  finding.Code = "answers and pattern" // both from standard input
	AnswerGraded  finding.Code = "answer graded"       // student, sheet, outcome
	AnswerUnread  finding.Code = "answer unread"       // student, line, outcome
	OfOtherParts  finding.Code = "answers of others"   // layouts; 0: of the file's part, seed
)

// What a drawing of a pattern cannot say.
const (
	DrawnAsPoints finding.Code = "drawn as points" // kinds
	NotInDrawing  finding.Code = "not in drawing"  //
)
