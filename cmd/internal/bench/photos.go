package bench

import (
	"io"
	"mime"
	"net/http"
	"sync"
	"time"

	"drawdown/patterns/scan"
)

// atOneTime limits decoding to one picture at a time: each takes up to some
// hundred megabytes.
var atOneTime sync.Mutex

// postPhoto receives a picture: as the body, or as the file of a form. It is
// stored re-encoded from its pixels.
func (b *Bench) postPhoto(w http.ResponseWriter, r *http.Request) error {
	data, err := b.pictureOf(w, r)
	if err != nil {
		return err
	}
	atOneTime.Lock()
	photo, err := scan.Photo(data)
	atOneTime.Unlock()
	if err != nil {
		return failure{http.StatusUnprocessableEntity, err}
	}
	sum, err := b.store.PutPhoto(photo)
	if err != nil {
		return err
	}
	w.Header().Set("Location", photosPath+"/"+sum)
	answer(w, http.StatusCreated, map[string]string{"photo": sum})
	return nil
}

func (b *Bench) pictureOf(w http.ResponseWriter, r *http.Request) ([]byte, error) {
	const form = 4 << 10 // the rest of the form besides the file
	body := http.MaxBytesReader(w, r.Body, b.Limits.Photo+form)
	from := io.Reader(body)
	if kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type")); err == nil && kind == "multipart/form-data" {
		r.Body = body
		parts, err := r.MultipartReader()
		if err != nil {
			return nil, wrong(http.StatusBadRequest, NoBody, nil)
		}
		part, err := parts.NextPart()
		for err == nil && part.FileName() == "" {
			part, err = parts.NextPart()
		}
		if err == io.EOF {
			return nil, wrong(http.StatusBadRequest, NoBody, nil)
		}
		if err != nil {
			return nil, bodyUnread(err)
		}
		from = part
	}
	data, err := io.ReadAll(io.LimitReader(from, b.Limits.Photo+1))
	switch {
	case err != nil:
		return nil, bodyUnread(err)
	case int64(len(data)) > b.Limits.Photo:
		return nil, failure{http.StatusRequestEntityTooLarge, tooMany(b.Limits.Photo)}
	case len(data) == 0:
		return nil, wrong(http.StatusBadRequest, NoBody, nil)
	}
	return data, nil
}

// getPhoto sends a picture by its SHA-256. What is stored under it never changes.
func (b *Bench) getPhoto(w http.ResponseWriter, r *http.Request) error {
	photo, err := b.store.Photo(r.PathValue("photo"))
	if err != nil {
		return err
	}
	http.NewResponseController(w).SetWriteDeadline(time.Now().Add(b.Limits.PhotoTime))
	w.Header().Set("Cache-Control", "private, max-age=31536000, immutable")
	w.Header().Set("Content-Type", "image/jpeg")
	w.Write(photo) // ignore the error: a reader who has gone needs no answer
	return nil
}
