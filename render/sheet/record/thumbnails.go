package record

import (
	"drawdown/render/scene"
	"drawdown/render/words"
)

// Photo is a thumbnail with its size in pixels.
type Photo struct {
	JPEG          []byte
	Width, Height int
}

// captioned is a photo with what it shows.
type captioned struct{ sum, says string }

const (
	photosAcross = 3
	photoGap     = 4.0  // between photos, in millimetres
	mostPhoto    = 52.0 // its height
)

// photos draws thumbnails in rows, each above its caption.
func (l *layout) photos(list []captioned) {
	width := (l.run.Pen.Paper.Content() - (photosAcross-1)*photoGap) / photosAcross
	line := l.run.Pen.Paper.Line
	var row []captioned
	flush := func() {
		high, under := 0.0, 0
		for _, c := range row {
			_, h := l.Photos[c.sum].size(width)
			high, under = max(high, h), max(under, len(l.run.Pen.Paper.BreakText(c.says, width)))
		}
		l.run.Room(high + float64(under)*line + 4)
		for i, c := range row {
			photo := l.Photos[c.sum]
			left, top := l.run.Pen.Left()+float64(i)*(width+photoGap), l.run.Y+1
			w, h := photo.size(width)
			l.run.Pen.Photos = append(l.run.Pen.Photos, scene.Photo{JPEG: photo.JPEG, Box: scene.Box{Left: left, Top: top, Right: left + w, Bottom: top + h}})
			l.run.Pen.Lines(left, top+high+line, l.run.Pen.Paper.BreakText(c.says, width))
		}
		l.run.Y += high + float64(under)*line + 4
		row = nil
	}
	for _, c := range list {
		if _, there := l.Photos[c.sum]; !there {
			continue
		}
		if row = append(row, c); len(row) == photosAcross {
			flush()
		}
	}
	if len(row) > 0 {
		flush()
	}
}

// size fits the photo into a width, and into the greatest height.
func (p Photo) size(width float64) (w, h float64) {
	h = min(mostPhoto, width*float64(p.Height)/float64(max(1, p.Width)))
	return h * float64(p.Width) / float64(max(1, p.Height)), h
}

// ownPhotos are those of a run, with what was seen.
func (l *layout) ownPhotos() {
	var list []captioned
	for _, s := range l.seen {
		if s.photo != "" {
			list = append(list, captioned{s.photo, words.Row(s.Letter, l.photoName(s.photo), s.what)})
		}
	}
	l.photos(list)
}

// photoName refers to a photo by the start of its SHA-256.
func (l *layout) photoName(sum string) string {
	return sprint(l.w.Photo, sum[:min(8, len(sum))])
}
