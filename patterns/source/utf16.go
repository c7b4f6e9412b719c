package source

import (
	"bytes"
	"encoding/binary"
	"slices"
	"unicode/utf16"
	"unicode/utf8"
)

// asUTF8 converts a text in UTF-16 with a byte-order mark, as some editors and
// spreadsheets save it, to UTF-8. All other bytes stay unchanged, and so does
// invalid or overlong UTF-16, for the reader to report.
func asUTF8(data []byte, most int64) []byte {
	var order binary.ByteOrder = binary.LittleEndian
	switch {
	case bytes.HasPrefix(data, []byte{0xFE, 0xFF}):
		order = binary.BigEndian
	case !bytes.HasPrefix(data, []byte{0xFF, 0xFE}):
		return data
	}
	if len(data)%2 != 0 || int64(len(data)) > most {
		return data
	}
	units := make([]uint16, len(data)/2-1)
	for i := range units {
		units[i] = order.Uint16(data[2*i+2:])
	}
	runes := utf16.Decode(units)
	if slices.Contains(runes, utf8.RuneError) { // an unpaired surrogate
		return data
	}
	return []byte(string(runes))
}
