package page

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"io/fs"
	"strings"
	"sync"
)

//go:embed assets
var assets embed.FS

// Assets returns the style sheet, the scripts and the typeface in one folder,
// named by the hash of all of them, so that they can be cached for ever. The
// server serves it under /assets/.
func Assets() fs.FS { return hashed{} }

type hashed struct{}

// Open opens HASH/NAME.
func (hashed) Open(name string) (fs.File, error) {
	folder, file, inside := strings.Cut(name, "/")
	if folder != assetHash() {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	if !inside {
		return assets.Open("assets")
	}
	return assets.Open("assets/" + file)
}

// asset returns the address of a file.
func asset(name string) string { return "/assets/" + assetHash() + "/" + name }

var assetHash = sync.OnceValue(func() string {
	sum := sha256.New()
	err := fs.WalkDir(assets, "assets", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		data, err := assets.ReadFile(name)
		sum.Write([]byte(name))
		sum.Write(data)
		return err
	})
	if err != nil {
		panic(err) // the files are embedded
	}
	return hex.EncodeToString(sum.Sum(nil))[:16]
})
