package cli

import "drawdown/geometry/finding"

// Errors of a call, besides those of the packages it uses.
const (
	OutputNotWritten finding.Code = "output not written"   // why
	BatchFailed      finding.Code = "batch failed"         // failed, n, drawn
	ErrorsInFile     finding.Code = "batch errors"         // n
	NoWrenchList     finding.Code = "wrench list missing"  // file
	SameName         finding.Code = "cards of one name"    // clashes: each a SameCard
	SameCard         finding.Code = "card of two patterns" // patterns, name
)

// Errors of a check of several files.
const EmptyFolder finding.Code = "folder without files" // folder, allowed: endings

// Errors of a command line.
const (
	SeeHelp      finding.Code = "call see help"        // help
	NoCommand    finding.Code = "call unknown command" // name, meant, commands
	FlagFirst    finding.Code = "call flag first"      // flag
	PatternFirst finding.Code = "call pattern first"   // name
	OneAtATime   finding.Code = "call one at a time"   // sort, written
	TakesNoName  finding.Code = "call takes no name"   // command, written
	Which        finding.Code = "call which"           // sort, example
	EmptyName    finding.Code = "call empty name"      //
	StdinOnce    finding.Code = "call stdin once"      //
	TwoChecks    finding.Code = "call two checks"      //
	NeedsName    finding.Code = "call needs name"      // flag, example
	NotWithNew   finding.Code = "call not with new"    //
	OnlyWithNew  finding.Code = "call only with new"   // flag
	JSONOfList   finding.Code = "call json of list"    //
	WhichShell   finding.Code = "call which shell"     // shells
	WhichBolt    finding.Code = "call which bolt"      //
	KindOfFile   finding.Code = "call kind of file"    //
	SheetOfFile  finding.Code = "call sheet of file"   //
	KindLacks    finding.Code = "call kind lacks"      // flag: the one that states it
	WhichTorque  finding.Code = "call which torque"    //
	PortRange    finding.Code = "call port range"      // written, most
	ListIsFolder finding.Code = "wrench list folder"   // file
	OverItself   finding.Code = "call over itself"     // path, sort
	EditedFile   finding.Code = "call edited file"     // path
	NotOfFolder  finding.Code = "call not of folder"   // flag
	LibraryLine  finding.Code = "library line"         // file, fasteners, title, machine, errors, warnings, prints: out of date
	LibraryEmpty finding.Code = "library empty"        // folder
	TwoFiles     finding.Code = "call two files"       //
)

// Results and errors of calls that read the record.
const (
	WhichRecordAct finding.Code = "call records act"    // written, acts
	RecordActNeeds finding.Code = "call records needs"  // act, example
	RecordActAlone finding.Code = "call records alone"  // act, written
	RecordActFlag  finding.Code = "call records flag"   // act, flag
	NoDay          finding.Code = "call no day"         // flag, written
	RecordSound    finding.Code = "records sound"       // entries, head, met: the entry of --against
	RecordProves   finding.Code = "records proves"      // against
	RecordBackedUp finding.Code = "records backed up"   // file
	RecordRestored finding.Code = "records restored"    // folder, aside
	RecordErased   finding.Code = "records erased"      // who
	RecordsNone    finding.Code = "records none listed" //
)

// Errors of a new layout.
const (
	WhichLayout   finding.Code = "new which layout" //
	SaysNothing   finding.Code = "new says nothing" // flag, other
	NoRows        finding.Code = "new no rows"      //
	ShortTop      finding.Code = "new short top"    // n
	TooManyPlaces finding.Code = "new too many"     // most
	NoCounts      finding.Code = "new no counts"    // written
	NoCount       finding.Code = "new no count"     // written, most
	NoLengths     finding.Code = "new no lengths"   // written
)

// Errors in the description of a scan.
const (
	NoResolution finding.Code = "trace no resolution" // written, least, most
	KnownUnread  finding.Code = "trace known unread"  //
	KnownSame    finding.Code = "trace known same"    // id
	CornersCount finding.Code = "trace corners count" // written, n
	NoPixel      finding.Code = "trace no pixel"      // written
)

// Errors of a call of book or handout.
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

// What a drawing of a pattern cannot contain.
const (
	DrawnAsPoints finding.Code = "drawn as points" // kinds
	NotInDrawing  finding.Code = "not in drawing"  //
)
