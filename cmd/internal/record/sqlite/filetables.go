package sqlite

// migrations are the steps that each make one version of the schema from the
// one before. A published step is never changed. Tables and columns are those
// of the other databases.
// The body of an entry is the record; all other columns of entry, subject and
// took_part are copied from bodies for searching, and a check of the store
// compares them.
var migrations = []string{`
CREATE TABLE subject (
	n       INTEGER PRIMARY KEY, -- place of its first entry in the chain
	id      TEXT NOT NULL UNIQUE,
	kind    TEXT NOT NULL,
	job     INTEGER REFERENCES subject (n),
	machine TEXT NOT NULL, -- for searches: lower case
	joint   TEXT NOT NULL,
	first   INTEGER NOT NULL, -- time of the first entry, ms
	last    INTEGER NOT NULL  -- time of the latest
);
CREATE INDEX subject_kind ON subject (kind, n);
CREATE INDEX subject_job ON subject (job) WHERE job IS NOT NULL;

CREATE TABLE entry (
	n       INTEGER PRIMARY KEY, -- place in the chain, from 1 without a gap
	subject INTEGER NOT NULL REFERENCES subject (n),
	version INTEGER NOT NULL, -- 0: what started it
	id      TEXT NOT NULL,
	act     TEXT NOT NULL,
	wrench  TEXT NOT NULL,
	body    BLOB NOT NULL,
	hash    BLOB NOT NULL
);
CREATE UNIQUE INDEX entry_version ON entry (subject, version);
CREATE UNIQUE INDEX entry_id ON entry (subject, id);
CREATE INDEX entry_ended ON entry (subject, act) WHERE act IN ('seal', 'void', 'close');
CREATE INDEX entry_printed ON entry (n) WHERE act = 'printed';
CREATE INDEX entry_wrench ON entry (wrench, subject) WHERE wrench <> '';

CREATE TABLE person (
	n    INTEGER PRIMARY KEY,
	hash TEXT NOT NULL UNIQUE,
	name TEXT UNIQUE, -- NULL: erased
	salt BLOB
);

CREATE TABLE took_part (
	person  INTEGER NOT NULL REFERENCES person (n),
	subject INTEGER NOT NULL REFERENCES subject (n),
	PRIMARY KEY (person, subject)
) WITHOUT ROWID;

CREATE TABLE blob (
	sum  TEXT PRIMARY KEY, -- SHA-256 in hexadecimal
	kind TEXT NOT NULL,
	data BLOB NOT NULL
);

CREATE TABLE refusal ( -- outside the chain: so that an entry sent twice gets the same answer
	subject INTEGER NOT NULL,
	id      TEXT NOT NULL,
	body    BLOB NOT NULL,
	answer  BLOB NOT NULL,
	PRIMARY KEY (subject, id)
) WITHOUT ROWID;
`}
