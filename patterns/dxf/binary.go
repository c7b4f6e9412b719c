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

// bytesSource reads the groups of a binary drawing. A code has two bytes; up to
// release 12 it has one, and a larger code follows an escape in two.
type bytesSource struct {
	data    []byte
	at      int
	oneByte bool
}

func newBytesSource(data []byte) *bytesSource {
	s := &bytesSource{data: data, at: len(sentinel)}
	// A drawing begins with code 0 or with a comment, which has code 999.
	s.oneByte = len(data) > s.at+1 && (data[s.at] == 0 && data[s.at+1] != 0 || data[s.at] == 255)
	return s
}

func (s *bytesSource) next() (pair, bool, *fault) {
	if s.at >= len(s.data) {
		return pair{}, false, nil
	}
	start := s.at
	code := s.code()
	if code < 0 || code > highestCode {
		return pair{}, false, faultAt(start, "", NoGroup, finding.Values{"byte": start})
	}
	text, ok := s.value(code)
	if !ok {
		return pair{}, false, faultAt(start, "", TornValue, finding.Values{"code": code, "byte": start})
	}
	return pair{code, text, start}, true, nil
}

// take returns the next n bytes, or nil if the drawing ends before.
func (s *bytesSource) take(n int) []byte {
	if len(s.data)-s.at < n {
		return nil
	}
	s.at += n
	return s.data[s.at-n : s.at]
}

// code returns the next code, or -1 if the drawing ends before.
func (s *bytesSource) code() int {
	if s.oneByte {
		b := s.take(1)
		if b == nil {
			return -1
		}
		if b[0] != 255 {
			return int(b[0])
		}
	}
	b := s.take(2)
	if b == nil {
		return -1
	}
	return int(binary.LittleEndian.Uint16(b))
}

// values lists the binary forms of values: their codes, their length and how to
// write them as text. All others are texts.
var values = []struct {
	from, to, bytes int
	write           func([]byte) string
}{
	{10, 59, 8, double}, {110, 149, 8, double}, {210, 239, 8, double}, {460, 469, 8, double}, {1010, 1059, 8, double},
	{60, 79, 2, short}, {170, 179, 2, short}, {270, 289, 2, short}, {370, 389, 2, short}, {400, 409, 2, short}, {1060, 1070, 2, short},
	{90, 99, 4, long}, {420, 429, 4, long}, {440, 459, 4, long}, {1071, 1071, 4, long},
	{160, 169, 8, longest}, {290, 299, 1, flag}, {310, 319, 1, nil}, {1004, 1004, 1, nil},
}

func double(b []byte) string {
	return strconv.FormatFloat(math.Float64frombits(binary.LittleEndian.Uint64(b)), 'g', -1, 64)
}
func short(b []byte) string   { return strconv.Itoa(int(int16(binary.LittleEndian.Uint16(b)))) }
func long(b []byte) string    { return strconv.Itoa(int(int32(binary.LittleEndian.Uint32(b)))) }
func longest(b []byte) string { return strconv.FormatInt(int64(binary.LittleEndian.Uint64(b)), 10) }
func flag(b []byte) string    { return strconv.Itoa(int(b[0])) }

// value reads a value as text; it is false if the drawing ends before.
func (s *bytesSource) value(code int) (string, bool) {
	for _, v := range values {
		if code < v.from || code > v.to {
			continue
		}
		b := s.take(v.bytes)
		if b == nil {
			return "", false
		}
		if v.write == nil { // pictures and similar data, which are not read here
			return "", s.take(int(b[0])) != nil
		}
		return v.write(b), true
	}
	end := bytes.IndexByte(s.data[s.at:], 0)
	if end < 0 {
		return "", false
	}
	return string(s.take(end + 1)[:end]), true
}
