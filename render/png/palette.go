package png

import (
	"bytes"
	"encoding/binary"
	"sync"

	"drawdown/render/scene"
)

type rgb [3]uint8

// palette holds white, the other inks, and as many even blends of every two
// inks as fit into 256 entries: a soft edge is a blend of two inks. White is at
// index 0.
var palette = sync.OnceValue(func() []rgb {
	inks := []rgb{colour(scene.White)}
	for k := scene.Black; k < scene.White; k++ {
		inks = append(inks, colour(k))
	}
	total := 0
	pairs(inks, func(a, b rgb) { total += apart(a, b) })
	room := 256 - len(inks)
	blends := inks
	pairs(inks, func(a, b rgb) {
		steps := room * apart(a, b) / total
		for i := 1; i <= steps; i++ {
			blends = append(blends, blend(a, b, i, steps+1))
		}
	})
	return blends
})

func colour(k scene.Ink) rgb {
	r, g, b := k.RGB()
	return rgb{r, g, b}
}

func pairs(inks []rgb, do func(a, b rgb)) {
	for i, a := range inks {
		for _, b := range inks[i+1:] {
			do(a, b)
		}
	}
}

// apart is the largest difference of two colours in a channel.
func apart(a, b rgb) int {
	most := 0
	for i := range a {
		most = max(most, int(a[i])-int(b[i]), int(b[i])-int(a[i]))
	}
	return most
}

func blend(a, b rgb, part, parts int) rgb {
	var c rgb
	for i := range c {
		c[i] = uint8((int(a[i])*(parts-part) + int(b[i])*part + parts/2) / parts)
	}
	return c
}

func nearest(c rgb) uint8 {
	best, least := 0, 1<<30
	for i, q := range palette() {
		r, g, b := int(c[0])-int(q[0]), int(c[1])-int(q[1]), int(c[2])-int(q[2])
		if d := r*r + g*g + b*b; d < least {
			best, least = i, d
		}
	}
	return uint8(best)
}

// cacheBits is chosen so that few colours of a page share an entry.
const cacheBits = 14

// mapper maps opaque pixels to palette indices. It caches the results: a page
// has millions of pixels but only some thousand colours.
type mapper struct {
	pixels  [1 << cacheBits]uint32
	indices [1 << cacheBits]uint8
}

const white = 0xffffffff

// A row is compared in long and short blocks of pixels: most long ones equal
// the one above, and most of the rest have one colour.
const longBlock, shortBlock = 256, 32

// rows maps rows of RGBA pixels. Each row of out begins with a filter byte.
func (m *mapper) rows(out, pix []byte, width int) {
	var above []byte
	for y := 0; len(out) > 0; y++ {
		row := out[:width+1]
		row[0] = 0 // PNG filter "none": palette indices cannot be predicted
		for x := 0; x < width; x += longBlock {
			n := min(longBlock, width-x)
			at := 4 * (y*width + x)
			block := pix[at : at+4*n]
			if up := at - 4*width; up >= 0 && bytes.Equal(block, pix[up:up+4*n]) {
				copy(row[1+x:1+x+n], above[x:])
				continue
			}
			m.long(row[1+x:1+x+n], block)
		}
		above = row[1:]
		out = out[width+1:]
	}
}

func (m *mapper) long(out, pix []byte) {
	for len(out) > 0 {
		n := min(shortBlock, len(out))
		m.short(out[:n], pix[:4*n])
		out, pix = out[n:], pix[4*n:]
	}
}

func (m *mapper) short(out, pix []byte) {
	last := binary.LittleEndian.Uint32(pix)
	index := m.index(last)
	if len(out) == shortBlock && bytes.Equal(pix[4:], pix[:len(pix)-4]) { // all pixels are equal
		eight := uint64(index) * 0x0101010101010101
		for x := 0; x < shortBlock; x += 8 {
			binary.LittleEndian.PutUint64(out[x:], eight)
		}
		return
	}
	for x := range out {
		if v := binary.LittleEndian.Uint32(pix[4*x:]); v != last {
			last, index = v, m.index(v)
		}
		out[x] = index
	}
}

func (m *mapper) index(v uint32) uint8 {
	if v == white {
		return 0
	}
	slot := v * 0x9e3779b1 >> (32 - cacheBits)
	if m.pixels[slot] != v {
		m.pixels[slot] = v
		m.indices[slot] = nearest(rgb{uint8(v), uint8(v >> 8), uint8(v >> 16)})
	}
	return m.indices[slot]
}
