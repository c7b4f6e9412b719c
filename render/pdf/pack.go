package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strconv"

	"github.com/klauspost/compress/zlib"
)

// packer takes the plain file from gofpdf and writes it with compressed pages
// and additional catalog entries. gofpdf would create a new compressor for each
// page, which takes longer than everything else on a page of a book; and it
// cannot state the language, or that a sheet must be printed at true size. The
// file has the structure of ISO 32000-1, 7.5.
type packer struct {
	w       io.Writer
	catalog string // further entries
	written int
	offsets map[int]int // of the objects
	coder   *zlib.Writer
	packed  bytes.Buffer
}

// coderLevel is the fast level: higher ones save a few per cent of a file that
// consists mostly of the typeface.
const coderLevel = 1

func newPacker(w io.Writer, language string) *packer {
	catalog := "/ViewerPreferences << /PrintScaling /None /DisplayDocTitle true >>\n"
	if language != "" {
		catalog += "/Lang (" + language + ")\n"
	}
	return &packer{w: w, catalog: catalog, offsets: map[int]int{}}
}

var errForm = errors.New("the PDF file has not the form that gofpdf gives it")

// Write takes the whole file at once, as gofpdf passes it.
func (p *packer) Write(file []byte) (int, error) {
	head, rest, ok := bytes.Cut(file, []byte("\n"))
	if !ok || p.written > 0 || !bytes.HasPrefix(head, []byte("%PDF-")) {
		return 0, errForm
	}
	if err := p.put(head, []byte("\n")); err != nil {
		return 0, err
	}
	for !bytes.HasPrefix(rest, []byte("xref\n")) {
		var err error
		if rest, err = p.object(rest); err != nil {
			return 0, err
		}
	}
	return len(file), p.table(rest)
}

func (p *packer) put(parts ...[]byte) error {
	for _, part := range parts {
		n, err := p.w.Write(part)
		p.written += n
		if err != nil {
			return err
		}
	}
	return nil
}

func (p *packer) object(rest []byte) ([]byte, error) {
	head, body, ok := bytes.Cut(rest, []byte(" 0 obj\n"))
	number, err := strconv.Atoi(string(head))
	if !ok || err != nil {
		return nil, errForm
	}
	p.offsets[number] = p.written
	if err := p.put(head, []byte(" 0 obj\n")); err != nil {
		return nil, err
	}
	end := bytes.Index(body, []byte("endobj\n"))
	if end < 0 {
		return nil, errForm
	}
	if at := bytes.Index(body[:end], []byte("stream\n")); at >= 0 {
		return p.stream(body[:at], body[at+len("stream\n"):])
	}
	entries, rest := body[:end], body[end:]
	if mark := []byte("/Type /Catalog\n"); bytes.Contains(entries, mark) {
		entries = bytes.Replace(entries, mark, append(mark, p.catalog...), 1)
	}
	return rest[len("endobj\n"):], p.put(entries, []byte("endobj\n"))
}

// stream copies a stream object. A dictionary with only a length belongs to
// plain content, which is compressed.
func (p *packer) stream(entries, body []byte) ([]byte, error) {
	length, err := streamLength(entries)
	if err != nil || length > len(body) {
		return nil, errForm
	}
	content, rest := body[:length], body[length:]
	rest, ok := bytes.CutPrefix(rest, []byte("\nendstream\nendobj\n"))
	if !ok {
		return nil, errForm
	}
	if string(entries) == fmt.Sprintf("<</Length %d>>\n", length) {
		if content, err = p.compress(content); err != nil {
			return nil, err
		}
		entries = fmt.Appendf(nil, "<</Filter /FlateDecode /Length %d>>\n", len(content))
	}
	return rest, p.put(entries, []byte("stream\n"), content, []byte("\nendstream\nendobj\n"))
}

func streamLength(entries []byte) (int, error) {
	_, after, _ := bytes.Cut(entries, []byte("/Length "))
	behind := bytes.TrimLeft(after, "0123456789")
	return strconv.Atoi(string(after[:len(after)-len(behind)]))
}

func (p *packer) compress(content []byte) ([]byte, error) {
	p.packed.Reset()
	if p.coder == nil {
		coder, err := zlib.NewWriterLevel(&p.packed, coderLevel)
		if err != nil {
			return nil, err
		}
		p.coder = coder
	}
	p.coder.Reset(&p.packed)
	if _, err := p.coder.Write(content); err != nil {
		return nil, err
	}
	err := p.coder.Close()
	return p.packed.Bytes(), err
}

func (p *packer) table(rest []byte) error {
	_, trailer, ok := bytes.Cut(rest, []byte("trailer\n"))
	trailer, _, found := bytes.Cut(trailer, []byte("startxref\n"))
	if !ok || !found {
		return errForm
	}
	start := p.written
	table := fmt.Appendf(nil, "xref\n0 %d\n0000000000 65535 f \n", len(p.offsets)+1)
	for number := 1; number <= len(p.offsets); number++ {
		at, ok := p.offsets[number]
		if !ok {
			return errForm
		}
		table = fmt.Appendf(table, "%010d 00000 n \n", at)
	}
	table = append(append(table, "trailer\n"...), trailer...)
	return p.put(fmt.Appendf(table, "startxref\n%d\n%%%%EOF\n", start))
}
