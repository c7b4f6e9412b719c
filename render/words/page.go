package words

import (
	"cmp"
	"fmt"
)

// Page is the words of the page at the bench. A fastener is named by its number and
// its id.
type Page struct {
	Common      PageCommon
	Home        PageHome
	Pattern     PagePattern
	Edit        PageEdit
	Run         PageRun
	Paper       PagePaper
	Trouble     PageTrouble
	Seen        PageSeen
	Shopping    PageShopping
	MachineShop PageMachineShop
	Job         PageJob
	Records     PageRecords
	Share       PageShare
	Join        PageJoin
	Settings    PageSettings
	Message     PageMessage
}

// PageCommon is the words of what all pages share.
type PageCommon struct {
	Bench      string
	Records    string
	Share      string
	Settings   string
	Skip       string
	Menu       string
	Cancel     string
	Close      string
	Who        string
	WhoSays    string
	WhoNone    string
	WhoSet     string
	NeedScript string
	Again      string
	NotSent    string
	Stale      string
}

// PageHome is the words of the first page.
type PageHome struct {
	Open         string
	OpenNone     string
	Start        string
	Patterns     string
	PatternsNone string // No patterns of your own yet. Save a pattern file in %s and reload this page.
	Builtin      string
	Recent       string
	RecentNone   string
	Fasteners    Plural // %d fastener
	Steps        string // %[1]d of %[2]d steps
	Troubles     Plural // %d open trouble report
	Machine      string // machine %s
	Order        string // order %s
	By           string // %[1]s, %[2]s
	Unsound      string
	IsMachine    string
	States       map[string]string // by run.Status
}

// PagePattern is the words of the page where the work on a joint starts.
type PagePattern struct {
	Part         string
	Work         string
	Number       string
	Order        string
	Note         string
	Optional     string
	StartLoosen  string
	StartTighten string
	StartJob     string // of a machine
	Findings     string
	FindingsNone string
	Unsound      string
	IsMachine    string
	Print        string
	Sheets       map[string]string // by sheet: card, tray, condition
	Printed      string            // printed %s
	OutOfDate    string
	NeverPrinted string
	OpenRuns     string
}

// PageEdit is the words of the page where a pattern is edited.
type PageEdit struct {
	Open         string // the link to it
	Picture      string
	NoPicture    string
	File         string
	Undo         string
	Redo         string
	Save         string
	SaveAs       string
	Saved        string
	Unsaved      string
	Tools        string
	Choose       string
	ChooseSays   string
	Several      string
	SeveralSays  string
	Add          string
	AddSays      string
	TapOrder     string
	OrderSays    string
	Apart        string // %s apart: %s
	Chosen       string
	Left         string
	Right        string
	Up           string
	Down         string
	Step         string
	Whole        string
	AlignX       string
	AlignY       string
	Regular      string
	MirrorX      string
	MirrorY      string
	Remove       string
	Single       string
	Earlier      string
	Later        string
	Line         string // line %d
	Ways         string
	Conflict     string
	ConflictSays string
	Mine         string
	Theirs       string
	TakeTheirs   string
	KeepMine     string
	Keys         map[string]string // of the file
}

// PageRun is the words of the page of a run.
type PageRun struct {
	Part            string
	Stages          string
	Stage           string // Stage %[1]d of %[2]d
	Round           string // round %d
	Step            string // step %[1]d of %[2]d
	NewStep         string // new bolt, %[1]d of %[2]d
	ZoomIn          string
	ZoomOut         string
	ZoomWhole       string
	Do              map[string]string // by plan.Action
	Done            string            // %s done
	TapAgain        string            // Tap again to record %s
	Recovery        string
	WorkedOut       string
	Total           string // total: %s
	Clockwise       string
	Anticlockwise   string
	Angle           string // %[1]s from the starting mark to the finishing mark, %[2]s; total so far %[3]s
	Begin           string
	WaitRuns        string
	WaitOver        string
	Accept          string
	AcceptSays      string
	AcceptBar       string
	Ready           string
	ReadySays       string
	ReadyAsk        string
	ReadySome       string
	NeedKind        string // %[1]d × %[2]s, new
	NeedGasket      string // %[1]d × gasket, new (%[2]s)
	NeedFastener    string // for %[1]s (%[2]s): a replacement
	NeedNew         string // the same for %s where it was not condemned
	NewerSays       string // what to do where a newer file changes the joint
	NewerGoOn       string
	NotReady        string
	AskRound        string
	AskUntil        string // Another round until: %s
	AskSits         string
	RoundFirst      string
	RoundSays       string // One round turns each fastener by %s, in order.
	AnotherRound    string
	Finished        string
	Neighbours      string // New fastener at %s: what about its neighbours?
	NeighboursSays  string
	TheBeside       string
	TheyStay        string
	TheyRestart     string
	NewAt           string
	WhoSaysSo       string
	ByFile          string
	ByLead          string
	Answer          string
	AnswerBar       string
	Blocked         string
	BlockedSays     string
	Behind          string // %[1]s is not finished in stage %[2]d.
	BehindSays      string
	GoOn            string
	GoOnSays        string
	AllDone         string
	Seal            string
	SealSays        string
	SealOpen        string // Still open: %s.
	SealNoWrench    string // No wrench number was recorded for: %s.
	Wrench          string
	WrenchSays      string
	FitNew          string
	WrenchNow       string
	WrenchNowSays   string
	GaugeNow        string
	GaugeNowSays    string
	Second          string
	SealedBy        string // Sealed by %[1]s, %[2]s
	VoidBy          string // Void: %[1]s, %[2]s
	ToRecord        string
	Undo            string
	TakeBack        string // Take back: %[1]s, by %[2]s
	TakeBackSays    string
	TakeBackDo      string
	Trouble         string
	More            string
	HandOver        string
	HandOverSays    string
	HandOverTo      string
	HandedOver      string
	Lines           map[string]string // by line of a hand over
	LineDone        string            // %[1]d steps; %[2]d fasteners finished
	LineOpen        string            // %[1]d steps on %[2]d fasteners
	LineAccept      string            // %d warnings to accept
	None            string
	OutOfOrder      string
	OutOfOrderSays  string // %s is next. For another step, give a reason.
	OutOfOrderDoes  string // This records %[1]s, stage %[2]d.
	StageOpen       string // Stage %[1]d is not complete. Still open: %[2]s.
	Reason          string
	DoItAnyway      string
	LeaveOut        string
	Interrupted     string
	InterruptedSays string
	InterruptedDo   string
	Replace         string
	ReplaceSays     string
	Measure         string
	MeasureWhat     string
	MeasureValue    string
	Unit            string
	Note            string
	Remark          string
	Save            string
	Find            string
	FindSays        string
	Photo           string
	PhotoLost       string
	Void            string
	VoidSays        string
	Saving          string
	SavingShort     string
	Held            Plural // %d tap is not saved yet
	HeldSays        string
	SendAgain       string
	Discard         string
	Offline         string
	Refused         string
	Resend          string
	RefusedSays     string
	RefusedBy       string // %[1]s, %[2]s
	TurnedToo       string
	TurnedYes       string
	States          map[string]string // by state of a mark
	StateBy         string            // %[1]s, %[2]s
	OpenTroubles    string
	Settle          string
	SettleSays      string
	Hole            string
	Repairs         map[string]string // by run.Repair, and none
	Thread          string            // of the insert
	Decide          string
	Decided         map[string]string // by run.Decision
	TurnOn          string            // turn on by %s
	TurnOnBy        string
	WhoDecided      string
	DecidedBy       string // decided by %[1]s, entered by %[2]s
	After           string
	AfterIn         string
	AfterOut        string
	Settled         string // settled by %[1]s, %[2]s
	AsSettled       string // The angle here was interrupted; %s. Do only this
	Keys            string
	Prints          string
}

// PagePaper is the words of work that was ticked on paper and is entered afterwards.
type PagePaper struct {
	Enter    string
	Says     string
	Day      string
	Note     string
	Do       string
	Done     string // on paper, %s: the day
	NotKnown string // the day
	Entered  string // entered %s
	Nothing  string // left to enter
}

// PageTrouble is the words of what a person sees who reports that something is wrong.
type PageTrouble struct {
	Title     string
	Place     string
	ToDo      string
	Report    string
	Note      string
	Blocks    map[string]string // by run.Blocks
	Tell      string
	Names     map[string]string // by run.Trouble, and unsure
	Short     map[string]string // by the same; for the mark
	StubTitle string
}

// PageJob is the words of the page of a job.
type PageJob struct {
	Title        string
	Badge        string
	Teardown     string
	Rebuild      string
	States       map[string]string // by teardown.Progress
	StartLoosen  string
	StartTighten string
	Part         string
	AllReady     string
	OneReady     string
	Runs         string
	RunsNone     string
	Newer        string
	NewerSays    string
	Adopt        string
	Adopted      string
	Changes      map[string]string // by run.Changed
	Change       string            // %[1]s: %[2]s → %[3]s
	Close        string
	CloseSays    string
	ClosedBy     string // Closed by %[1]s, %[2]s
	StartedBy    string // started by %[1]s, %[2]s
	OutOfOrder   string
	ToJob        string
	CountReady   string // %[1]d of %[2]d ready
	OneFitted    string
	AllFitted    string
	IsFitted     string // fitted: %[1]s, %[2]s
	CloseOpen    string
	Accept       string
	AcceptedBy   string // accepted by %[1]s, %[2]s: %[3]s
	Reason       string
	Next         string
	Early        string
}

// PageSeen is the words of what is found at a place, and of values that are read.
type PageSeen struct {
	Names     map[string]string // by run.Found
	What      string            // what is found
	Tap       string            // where to tap
	Place     string
	WholePart string // no place of its own
	Between   string // %[1]s and %[2]s
	Near      string // %s
	Point     string // that was tapped in the picture
	Other     string // a value that the file does not have
	Shim      string // the shim that is fitted
	Limits    string // limits: %s
	Outside   string // of the limits
	Joint     string
	Saved     string // the heading of what a reading comes to
}

// PageShopping is the words of the list of what a rebuild needs.
type PageShopping struct {
	Title     string
	Badge     string
	Says      string
	Nothing   string
	Have      string // heads of columns
	Count     string
	What      string
	For       string
	Ready     string
	Condemned string            // %s: the fasteners
	Sorts     map[string]string // by teardown.Sort
}

// PageMachineShop is the words of parts that go to the machine shop: on the page of
// the job, and on the sheet that goes with them.
type PageMachineShop struct {
	Title     string
	Badge     string
	Sheet     string // the sheet that goes with the parts
	To        string // to %s
	Parts     string // that go out
	Part      string
	Asked     string // what is asked for
	Kept      string // where small parts are, which way round it goes back
	SentBy    string
	Back      string
	Before    string // read before
	After     string // to be read after the work
	FrontSays string // which way round
	OwnPlace  string // to its own place %s
	ComesBack string
	WhichWay  string
	Answer    string // what the machine shop found and did
	Signature string // of the machine shop
	Name      string // of the machine shop
	Shown     string // the joint whose drawing shows the part
	Send      string
	NoneYet   string // no part can be sent
	IsOut     string // at %[1]s since %[2]s (%[3]s)
	WasBack   string // back %[1]s (%[2]s)
	Done      string // what was done
	TakeBack  string
	Values    string // read after the work
}

// PageRecords is the words of the list of records, and one of them.
type PageRecords struct {
	Machine      string
	Joint        string
	Person       string
	From         string
	To           string
	Find         string
	None         string
	NoneFound    string
	More         string
	Title        string
	Seal         string
	NotSealed    string
	SecondBy     string // Second signature: %[1]s, entered by %[2]s
	Head         string // Head of the chain: %s
	HeadSays     string
	Sound        string
	Files        string
	Steps        string
	Columns      map[string]string // by column
	StepStates   map[string]string // by run.StepState
	Old          string
	NewStep      string // new %[1]d/%[2]d: of the steps of a new fastener
	Troubles     string
	Readings     string
	Outside      string
	Found        string
	Notes        string
	Flags        string
	WrenchNumber string // Wrench %s
	HandOvers    string
	HandedTo     string // %[1]s to %[2]s, %[3]s
	Prints       string
	Corrections  string
	Correct      string
	CorrectSays  string
	Acts         map[string]string // by run.Act
	ToRun        string
}

// PageShare is the words of the page that lets tablets in.
type PageShare struct {
	Off         string
	OffSays     string // Start the program again with %s to let tablets in.
	Code        string
	CodeSays    string // For one device, until %s.
	NewCode     string
	Picture     string
	Addresses   string
	Trust       string
	TrustSays   string
	Certificate string
	Fingerprint string
	Systems     []TrustWords // by system
	Untested    string
	Devices     string
	DevicesNone string
	End         string
	Since       string // since %s
}

// PageJoin is the words of the page that asks for the code.
type PageJoin struct {
	Title  string
	Code   string
	Says   string
	Join   string
	Wrong  string
	Locked string // Too many wrong codes. Try again in %s.
}

// PageSettings is the words of language, brightness and sound.
type PageSettings struct {
	Languages string
	Scheme    string
	Schemes   map[string]string // by page.Scheme
	Sound     string
	SoundOn   string
}

// PageMessage is the words of the page that says why there is no such page, and what to do.
type PageMessage struct {
	Home   string
	Titles map[string]string // by page.Problem
	Says   map[string]string // by the same
}

// TrustWords tell how a system comes to trust a certificate.
type TrustWords struct {
	System string
	Steps  []string
}

// When says when something was done, where it was entered at that moment. What was
// ticked on paper has the day that the paper states, and the moment of the entry.
func (p PagePaper) When(onPaper bool, day, entered string) string {
	if !onPaper {
		return entered
	}
	return Row(fmt.Sprintf(p.Done, cmp.Or(day, p.NotKnown)), fmt.Sprintf(p.Entered, entered))
}
