package png

import (
	"bufio"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"io"
	"math"

	"github.com/klauspost/compress/zlib"
)

// level 1 of the deflate coder: level 6 saves a tenth of the bytes and takes
// twice as long.
const level = 1

// encode paints a page and writes it as an indexed PNG (ISO/IEC 15948) with its
// resolution, so that it prints at true size.
func encode(w io.Writer, p *painter, dpi int) error {
	c := &chunks{w: w}
	if _, err := io.WriteString(w, "\x89PNG\r\n\x1a\n"); err != nil {
		return err
	}
	size := binary.BigEndian.AppendUint32(nil, uint32(p.width))
	size = binary.BigEndian.AppendUint32(size, uint32(p.height))
	c.chunk("IHDR", append(size, 8, 3, 0, 0, 0)) // 8 bits per index, palette, not interlaced

	if p.page.Imprint != "" {
		c.chunk("tEXt", []byte("Comment\x00"+p.page.Imprint+"\n"))
	}

	perMetre := uint32(math.Round(float64(dpi) * 1000 / mmPerInch))
	density := binary.BigEndian.AppendUint32(nil, perMetre)
	density = binary.BigEndian.AppendUint32(density, perMetre)
	c.chunk("pHYs", append(density, 1)) // unit: metre

	var colours []byte
	for _, q := range palette() {
		colours = append(colours, q[:]...)
	}
	c.chunk("PLTE", colours)

	if err := data(c, p); err != nil {
		return err
	}
	c.chunk("IEND", nil)
	return c.err
}

// data writes the pixels. One goroutine paints a band while this one compresses
// the band before. The order of the bands, and so every byte, is the same on
// any number of cores.
func data(c *chunks, p *painter) error {
	out := bufio.NewWriterSize(c, 1<<15)
	deflate, err := zlib.NewWriterLevel(out, level)
	if err != nil {
		return err
	}
	done, free := make(chan band), make(chan []byte, 2)
	for range cap(free) {
		free <- make([]byte, bandRows*(p.width+1))
	}
	go paintAll(p, free, done)
	for b := range done {
		if err == nil {
			err = b.err
		}
		if err == nil {
			_, err = deflate.Write(b.pixels)
		}
		free <- b.pixels[:cap(b.pixels)]
	}
	if err != nil {
		return err
	}
	if err := deflate.Close(); err != nil {
		return err
	}
	return out.Flush()
}

type band struct {
	pixels []byte
	err    error
}

func paintAll(p *painter, free chan []byte, done chan<- band) {
	defer close(done)
	for first := 0; first < p.height; first += bandRows {
		b := paintOne(p, first, min(first+bandRows, p.height), <-free)
		done <- b
		if b.err != nil {
			return
		}
	}
}

func paintOne(p *painter, first, end int, buffer []byte) (b band) {
	defer func() {
		if r := recover(); r != nil {
			b = band{buffer, fmt.Errorf("the page cannot be painted: %v", r)}
		}
	}()
	p.paint(first, end, buffer)
	return band{pixels: buffer[:(end-first)*(p.width+1)]}
}

type chunks struct {
	w   io.Writer
	err error
}

func (c *chunks) chunk(kind string, content []byte) {
	if c.err != nil {
		return
	}
	b := binary.BigEndian.AppendUint32(make([]byte, 0, len(content)+12), uint32(len(content)))
	b = append(append(b, kind...), content...)
	b = binary.BigEndian.AppendUint32(b, crc32.ChecksumIEEE(b[4:]))
	_, c.err = c.w.Write(b)
}

// Write writes a piece of the compressed pixels as a chunk.
func (c *chunks) Write(b []byte) (int, error) {
	c.chunk("IDAT", b)
	return len(b), c.err
}
