package writing

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"

	"drawdown/patterns/source"
)

// mark begins the last line of a file that drawdown wrote. What follows is the
// fingerprint of all lines above it.
const mark = "# fingerprint: "

// marked ends a file with its fingerprint.
func (w *writer) marked() []byte {
	w.beside(mark+fingerprint(w.Bytes()), w.said(MarkIs))
	return w.Bytes()
}

func fingerprint(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:8])
}

// Untouched reports whether a file is as drawdown wrote it, so that nobody's work
// is lost where it is written again. A file without a fingerprint is not.
func Untouched(data []byte) bool {
	data = source.UnixLines(data)
	at := bytes.LastIndex(data, []byte("\n"+mark))
	if at < 0 {
		return false
	}
	line, rest, _ := bytes.Cut(data[at+1+len(mark):], []byte("\n"))
	said, _, _ := bytes.Cut(line, []byte(" "))
	return len(rest) == 0 && string(said) == fingerprint(data[:at+1])
}
