package postgres

// migrations are the steps that each make one version of the schema from the
// one before. A published step is never changed. Tables and columns are those
// of the file; a backup copies them from one to the other.
var migrations = []string{`
CREATE TABLE drawdown (version bigint NOT NULL); -- of the schema
INSERT INTO drawdown VALUES (0);

CREATE TABLE subject (
	n       bigint PRIMARY KEY, -- place of its first entry in the chain
	id      text NOT NULL UNIQUE,
	kind    text NOT NULL,
	job     bigint REFERENCES subject (n),
	machine text NOT NULL, -- for searches: lower case
	joint   text NOT NULL,
	first   bigint NOT NULL, -- time of the first entry, ms
	last    bigint NOT NULL  -- time of the latest
);
CREATE INDEX subject_kind ON subject (kind, n);
CREATE INDEX subject_job ON subject (job) WHERE job IS NOT NULL;

CREATE TABLE entry (
	n       bigint PRIMARY KEY, -- place in the chain, from 1 without a gap
	subject bigint NOT NULL REFERENCES subject (n),
	version bigint NOT NULL, -- 0: what started it
	id      text NOT NULL,
	act     text NOT NULL,
	wrench  text NOT NULL,
	body    bytea NOT NULL,
	hash    bytea NOT NULL
);
CREATE UNIQUE INDEX entry_version ON entry (subject, version);
CREATE UNIQUE INDEX entry_id ON entry (subject, id);
CREATE INDEX entry_ended ON entry (subject, act) WHERE act IN ('seal', 'void', 'close');
CREATE INDEX entry_printed ON entry (n) WHERE act = 'printed';
CREATE INDEX entry_wrench ON entry (wrench, subject) WHERE wrench <> '';

CREATE TABLE person (
	n    bigint PRIMARY KEY,
	hash text NOT NULL UNIQUE,
	name text COLLATE "C" UNIQUE, -- NULL: erased
	salt bytea
);
ALTER TABLE person ALTER COLUMN name SET STATISTICS 0; -- they would keep a name that was erased

CREATE TABLE took_part (
	person  bigint NOT NULL REFERENCES person (n),
	subject bigint NOT NULL REFERENCES subject (n),
	PRIMARY KEY (person, subject)
);

CREATE TABLE blob (
	sum  text PRIMARY KEY, -- SHA-256 in hexadecimal
	kind text NOT NULL,
	data bytea NOT NULL
);

CREATE TABLE refusal ( -- outside the chain: so that an entry sent twice gets the same answer
	subject bigint NOT NULL,
	id      text NOT NULL,
	body    bytea NOT NULL,
	answer  bytea NOT NULL,
	PRIMARY KEY (subject, id)
);
`}
