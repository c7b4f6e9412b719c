package bench

import "drawdown/geometry/finding"

// Reasons why the page cannot start.
const (
	PortTaken     finding.Code = "bench port taken"     // port
	NotListening  finding.Code = "bench not listening"  // why
	FolderIsFile  finding.Code = "bench folder is file" // folder
	FolderNotMade finding.Code = "bench no folder"      // folder, why
	NoDocuments   finding.Code = "bench no documents"   // why
	AlreadyRuns   finding.Code = "bench already runs"   //
	NoBrowser     finding.Code = "bench no browser"     // why
)

// Errors in a request.
const (
	NoKey       finding.Code = "bench no key"        //
	OtherHost   finding.Code = "bench other host"    // host
	OtherSite   finding.Code = "bench other site"    //
	NoRoute     finding.Code = "bench no route"      // path
	WrongMethod finding.Code = "bench wrong method"  // method, allowed
	TooLarge    finding.Code = "bench too large"     // most: MB or kB, unit
	NotJSON     finding.Code = "bench not json"      // line, column, why
	UnknownKey  finding.Code = "bench unknown key"   // key
	WrongValue  finding.Code = "bench wrong value"   // key, want, line, column
	MoreThanOne finding.Code = "bench more than one" //
	BodyCut     finding.Code = "bench body cut"      //
	NoBody      finding.Code = "bench no body"       //
	NoPattern   finding.Code = "bench no pattern"    // name, meant, all
	NotSound    finding.Code = "bench not sound"     // name, why
	NoDirection finding.Code = "bench no direction"  // written
	IsMachine   finding.Code = "bench is machine"    // name
	NotInJob    finding.Code = "bench not in job"    // of, job
	JobEnded    finding.Code = "bench job ended"     // job
	NoPaper     finding.Code = "bench no paper"      // written, allowed
	NoFormat    finding.Code = "bench no format"     // written, allowed
	DesktopOnly finding.Code = "bench desktop only"  //
	NotShared   finding.Code = "bench not shared"    //
	NoSession   finding.Code = "bench no session"    // id
	Broke       finding.Code = "bench broke"         //
	NoDate      finding.Code = "bench no date"       // written
	NotEditable finding.Code = "bench not editable"  // name
	NoFileName  finding.Code = "bench no file name"  // name
)
