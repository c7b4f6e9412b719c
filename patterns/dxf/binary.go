package dxf

import (
	"bytes"
	"encoding/binary"
	"math"
	"strconv"

	"drawdown/geometry/finding"
)

// sentinel begins a binary drawing.
var sentinel = []byte("AutoCAD Binary DXF\r\n\x1a\x00")

// bytesSource reads the groups of a binary drawing. Codes have two bytes; in
// releases up to 12 one byte, and larger codes two behind an escape.
type bytesSource struct {
	data    []byte
	at      int
	oneByte bool
	bad     *fault
}

func newBytesSource(data []byte) *bytesSource {
	s := &bytesSource{data: data, at: len(sentinel)}
	// A drawing begins with code 0 or with a comment, which has the code 999.
	s.oneByte = len(data) > s.at+1 && (data[s.at] == 0 && data[s.at+1] != 0 || data[s.at] == 255)
	return s
}

func (s *bytesSource) fault() *fault { return s.bad }

func (s *bytesSource) next() (pair, bool) {
	if s.bad != nil || s.at >= len(s.data) {
		return pair{}, false
	}
	start := s.at
	code, ok := s.code()
	if !ok || code > highestCode {
		s.bad = &fault{start, finding.Failed(NoGroup, finding.Values{"byte": start}), ""}
		return pair{}, false
	}
	text, ok := s.value(code)
	if !ok {
		s.bad = &fault{start, finding.Failed(TornValue, finding.Values{"code": code, "byte": start}), ""}
		return pair{}, false
	}
	return pair{code, text, start}, true
}

func (s *bytesSource) take(n int) ([]byte, bool) {
	if n < 0 || len(s.data)-s.at < n {
		return nil, false
	}
	s.at += n
	return s.data[s.at-n : s.at], true
}

func (s *bytesSource) code() (int, bool) {
	if s.oneByte {
		b, ok := s.take(1)
		if !ok || b[0] != 255 {
			return int(first(b)), ok
		}
	}
	b, ok := s.take(2)
	if !ok {
		return 0, false
	}
	return int(binary.LittleEndian.Uint16(b)), true
}

func first(b []byte) byte {
	if len(b) == 0 {
		return 0
	}
	return b[0]
}

// value reads a value as text: its form follows from the code.
func (s *bytesSource) value(code int) (string, bool) {
	in := func(from, to int) bool { return code >= from && code <= to }
	switch {
	case in(10, 59), in(110, 149), in(210, 239), in(460, 469), in(1010, 1059):
		b, ok := s.take(8)
		if !ok {
			return "", false
		}
		return strconv.FormatFloat(math.Float64frombits(binary.LittleEndian.Uint64(b)), 'g', -1, 64), true
	case in(60, 79), in(170, 179), in(270, 289), in(370, 389), in(400, 409), in(1060, 1070):
		b, ok := s.take(2)
		if !ok {
			return "", false
		}
		return strconv.Itoa(int(int16(binary.LittleEndian.Uint16(b)))), true
	case in(90, 99), in(420, 429), in(440, 459), code == 1071:
		b, ok := s.take(4)
		if !ok {
			return "", false
		}
		return strconv.Itoa(int(int32(binary.LittleEndian.Uint32(b)))), true
	case in(160, 169):
		b, ok := s.take(8)
		if !ok {
			return "", false
		}
		return strconv.FormatInt(int64(binary.LittleEndian.Uint64(b)), 10), true
	case in(290, 299):
		b, ok := s.take(1)
		return strconv.Itoa(int(first(b))), ok
	case in(310, 319), code == 1004:
		b, ok := s.take(1)
		if !ok {
			return "", false
		}
		_, ok = s.take(int(b[0]))
		return "", ok // pictures and the like, which nobody here reads
	}
	end := bytes.IndexByte(s.data[s.at:], 0)
	if end < 0 {
		return "", false
	}
	text := string(s.data[s.at : s.at+end])
	s.at += end + 1
	return text, true
}
