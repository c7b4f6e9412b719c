package record

import "drawdown/geometry/finding"

// Findings about a store.
const (
	InUse          finding.Code = "record in use"           // folder
	OnNetwork      finding.Code = "record on a network"     // folder, system: its kind
	NewerStore     finding.Code = "record newer"            // file, version, known
	OlderStore     finding.Code = "record older"            // folder
	NoStore        finding.Code = "record missing"          // folder
	BadAddress     finding.Code = "record address"          // why: of a setting in it
	Away           finding.Code = "record away"             // name: of the database, why
	NoSync         finding.Code = "record not synced"       // name
	NoRecordThere  finding.Code = "record not in database"  // name
	RecordThere    finding.Code = "record in database"      // name
	NotAStore      finding.Code = "record not a store"      // file, why
	NotKept        finding.Code = "record not kept"         // why
	DiskFull       finding.Code = "record disk full"        // folder
	NotReadBack    finding.Code = "record not read"         // why
	FolderNotMade  finding.Code = "record folder not made"  // folder, why
	NoUserFolder   finding.Code = "record no user folder"   // why
	NoSubject      finding.Code = "record no such run"      // id
	NoPhoto        finding.Code = "record no such photo"    // sum
	NoPerson       finding.Code = "record no such person"   // who
	OtherContent   finding.Code = "record entry id taken"   // id
	NoEntryID      finding.Code = "record entry id missing" //
	LongEntryID    finding.Code = "record entry id long"    // most
	NotAHash       finding.Code = "record not a hash"       // written
	BackupThere    finding.Code = "record backup there"     // file
	BackupUnsound  finding.Code = "record backup unsound"   // file, faults: findings
	EntryChanged   finding.Code = "record entry changed"    // place
	EntryMissing   finding.Code = "record entry missing"    // place
	IndexChanged   finding.Code = "record index changed"    // place
	SubjectChanged finding.Code = "record start changed"    // id
	BlobChanged    finding.Code = "record file changed"     // sum
	BlobMissing    finding.Code = "record file missing"     // place, sum
	NameChanged    finding.Code = "record name changed"     // count
	Rewritten      finding.Code = "record rewritten or cut" // hash, place: of the end now
	FileDamaged    finding.Code = "record database damaged" // why
)
