package bench

import (
	"cmp"
	"errors"
	"fmt"
	"hash/fnv"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"unicode"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/problem"
	"drawdown/render/words"
)

// shop is the folder of the shop's pattern and machine files, together with the
// built-in ones. A file of the shop takes precedence over a built-in one of the
// same name.
type shop struct {
	folder string
	root   *os.Root
	saving sync.Mutex // one text at a time

	mu    sync.Mutex
	stamp uint64 // of the folder when it was last read
	list  []shelved
}

// shelved is a pattern or a machine file in the list.
type shelved struct {
	Name        string       `json:"name"`
	Kind        job.FileKind `json:"kind"`
	Title       string       `json:"title"`
	Machine     string       `json:"machine"`
	Fasteners   int          `json:"fasteners"`
	Builtin     bool         `json:"builtin"`
	Sound       bool         `json:"sound"`
	Revision    string       `json:"revision,omitempty"`
	Fingerprint string       `json:"fingerprint,omitempty"`
	Reason      string       `json:"reason,omitempty"` // why it has errors

	problems problem.List
}

func openShop(folder string) (*shop, error) {
	about, err := os.Stat(folder)
	if err == nil && !about.IsDir() || err != nil && files.LooksLikeOne(folder) {
		return nil, finding.Failed(FolderIsFile, finding.Values{"folder": folder})
	}
	err = os.MkdirAll(folder, 0o777)
	if err == nil {
		var root *os.Root
		if root, err = os.OpenRoot(folder); err == nil {
			return &shop{folder: folder, root: root}, nil
		}
	}
	return nil, finding.Failed(FolderNotMade, finding.Values{"folder": folder, "why": files.Reason(err)})
}

func (s *shop) close() { s.root.Close() }

// DefaultFolder returns the default folder of the shop: drawdown in the user's
// documents.
func DefaultFolder() (string, error) {
	home, err := os.UserHomeDir()
	if err != nil {
		return "", finding.Failed(NoDocuments, finding.Values{"why": err})
	}
	documents := filepath.Join(home, "Documents")
	if about, err := os.Stat(documents); err != nil || !about.IsDir() {
		documents = home
	}
	return filepath.Join(documents, "drawdown"), nil
}

// freeze reads a file by its name, with all that it names, in its present
// state.
func (s *shop) freeze(name string) (job.Frozen, error) {
	if isName(name) {
		made, err := job.FreezeIn(s.root, name)
		if err == nil || !errors.Is(err, fs.ErrNotExist) {
			return made, err
		}
		if made, err := job.FreezeBuiltin(name); err == nil {
			return made, nil
		}
	}
	all := s.names()
	return job.Frozen{}, wrong(http.StatusNotFound, NoPattern, finding.Values{"name": cut(name), "meant": problem.Nearest(name, all), "all": all})
}

// isName reports whether a text can be the name of a file of the shop: it must
// not lead to another folder.
func isName(text string) bool {
	return text != "" && len(text) <= longestName && filepath.IsLocal(text) && text[0] != '.' &&
		!strings.ContainsFunc(text, func(r rune) bool { return unicode.IsControl(r) || strings.ContainsRune(`/\:`, r) })
}

// names lists the files that can be worked by: the shop's own first.
func (s *shop) names() []string {
	names, _, _ := job.ShopNames(s.root) // an unreadable folder has no names
	for _, name := range slices.Concat(patterns.Builtin(), patterns.Machines.Names()) {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// all lists the files with what is known of each. They are read again when
// something in the folder has changed.
func (s *shop) all() []shelved {
	s.mu.Lock()
	defer s.mu.Unlock()
	if now := s.stamped(); s.list == nil || now != s.stamp {
		s.list, s.stamp = s.read(), now
	}
	return s.list
}

func (s *shop) read() []shelved {
	list := []shelved{}
	own, _, _ := job.ShopNames(s.root)
	for _, name := range s.names() {
		if one, known := builtins.Load(name); known && !slices.Contains(own, name) {
			list = append(list, one.(shelved))
			continue
		}
		made, err := s.freeze(name)
		if err != nil {
			continue // deleted meanwhile
		}
		one := shelve(made)
		if one.Builtin {
			builtins.Store(name, one)
		}
		list = append(list, one)
	}
	return list
}

// builtins holds the built-in files as listed, by name. They never change, so each is
// read once.
var builtins sync.Map

func shelve(made job.Frozen) shelved {
	one := shelved{Name: made.Name, Kind: made.Kind, Builtin: made.Builtin, Sound: made.Sound(), problems: made.Problems}
	head := made.Plan.Heading
	if made.Kind == job.MachineFile {
		head = made.Overhaul.Heading
		for _, j := range made.Overhaul.Joints() {
			one.Fasteners += len(j.Joint.Fasteners)
		}
	} else {
		one.Fasteners = len(made.Plan.Joint.Fasteners)
	}
	one.Title, one.Machine, one.Revision, one.Fingerprint = cmp.Or(head.Title, made.Name), head.Machine, head.Revision, head.Fingerprint
	return one
}

// stamped returns a stamp that changes with the names, sizes and times in the
// folder and its subfolders.
func (s *shop) stamped() uint64 {
	sum, count := fnv.New64a(), 0
	fs.WalkDir(s.root.FS(), ".", func(path string, entry fs.DirEntry, err error) error {
		if count++; err != nil || count > mostShopFiles {
			return fs.SkipAll
		}
		if about, err := entry.Info(); err == nil && !entry.IsDir() {
			fmt.Fprintln(sum, path, about.Size(), about.ModTime().UnixNano())
		}
		return nil
	})
	return sum.Sum64()
}

func (b *Bench) getPatterns(w http.ResponseWriter, r *http.Request) error {
	answer(w, http.StatusOK, b.patterns(b.reader(r)))
	return nil
}

// patterns lists the files in a language.
func (b *Bench) patterns(c *words.Catalogue) []shelved {
	list := slices.Clone(b.shop.all())
	for i := range list {
		if !list[i].Sound {
			list[i].Reason = firstProblem(c, list[i].problems)
		}
	}
	return list
}

// checked lists what the check of a file finds, and what it could not judge.
func checked(made job.Frozen, c *words.Catalogue) []string {
	var all []string
	for _, p := range made.Problems.WithoutNotes().Worded(c.What, c.Allowed) {
		all = append(all, p.String())
	}
	if made.Sound() && made.Kind == job.PatternFile {
		_, open := made.Plan.Covered()
		all = append(all, c.SayAll(open)...)
	}
	return all
}

// firstProblem returns the first problem that prevents work, with its place.
func firstProblem(c *words.Catalogue, problems problem.List) string {
	for _, p := range problems.Worded(c.What, c.Allowed) {
		if p.Severity == problem.Error {
			return p.String()
		}
	}
	return ""
}
