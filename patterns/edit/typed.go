package edit

import (
	"bytes"
	"strings"
)

// Typed returns the change that typing made. A browser's field knows only line
// feeds: everything outside the new stretch keeps its line breaks, and the new
// lines get those of the file.
func Typed(before []byte, typed string) Change {
	plain, offsets := withLineFeeds(before)
	change := Between(plain, []byte(typed))
	for i, s := range change {
		from, to := offsets[s.At], offsets[s.At+len(s.Old)]
		change[i] = Splice{from, string(before[from:to]), strings.ReplaceAll(s.New, "\n", newText(before).newline())}
	}
	return change
}

// withLineFeeds returns a text as a browser's field has it, and for each of its
// offsets the one before the change.
func withLineFeeds(data []byte) (plain []byte, offsets []int) {
	for at := 0; at < len(data); at++ {
		offsets = append(offsets, at)
		switch {
		case data[at] != '\r':
			plain = append(plain, data[at])
		default:
			plain = append(plain, '\n')
			if bytes.HasPrefix(data[at:], []byte("\r\n")) {
				at++
			}
		}
	}
	return plain, append(offsets, len(data))
}

// Contents returns what a file holds.
func Contents(data []byte) (Value, error) {
	_, content, err := parse(newText(data))
	return content, err
}
