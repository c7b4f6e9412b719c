package imprint

import (
	"bytes"
	"io"
)

// Only the ends of a file are read, whatever its length.
const (
	headBytes = 4 << 10   // SVG and PNG files have the imprint at the start
	tailBytes = 256 << 10 // a PDF file at the end, before the table of its objects
)

// place is where a format stores the imprint.
type place struct {
	signature, before, after string
	atEnd                    bool
}

// PNG stores it in a tEXt chunk with the keyword Comment (ISO/IEC 15948,
// 11.3.4.3).
var places = []place{
	{signature: "%PDF-", before: "/Keywords (", after: ")", atEnd: true},
	{signature: "\x89PNG\r\n\x1a\n", before: "tEXtComment\x00", after: "\n"},
	{signature: "<svg ", before: "<metadata>", after: "</metadata>"},
}

// Read returns the imprints of one of our PDF, PNG or SVG files of a given
// size; none if it has none. It reads the start and the end of the file, not
// the whole.
func Read(file io.ReaderAt, size int64) ([]Imprint, error) {
	head := make([]byte, min(headBytes, size))
	if err := readAt(file, head, 0); err != nil {
		return nil, err
	}
	for _, p := range places {
		if !bytes.HasPrefix(head, []byte(p.signature)) {
			continue
		}
		text := head
		if p.atEnd {
			text = make([]byte, min(tailBytes, size))
			if err := readAt(file, text, size-int64(len(text))); err != nil {
				return nil, err
			}
			text = text[max(0, bytes.LastIndex(text, []byte(p.before))):]
		}
		return p.read(text), nil
	}
	return nil, nil
}

func (p place) read(text []byte) []Imprint {
	_, found, ok := bytes.Cut(text, []byte(p.before))
	inside, _, whole := bytes.Cut(found, []byte(p.after))
	if !ok || !whole {
		return nil
	}
	return Parse(string(inside))
}

func readAt(file io.ReaderAt, into []byte, at int64) error {
	n, err := file.ReadAt(into, at)
	if n == len(into) {
		return nil
	}
	return err
}
