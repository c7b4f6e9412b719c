package record

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"drawdown/cmd/internal/record/servertest"
	"drawdown/geometry/finding"
	"drawdown/geometry/testkit"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

// several opens a shared record as count processes do.
func several(t *testing.T, at Place, count int) (stores []*Store) {
	t.Helper()
	for range count {
		stores = append(stores, opened(t, at))
	}
	return stores
}

// onceEach refuses a step that the record already has: a rule in short.
func onceEach(step int) Judge {
	return func(before Before) (*run.Refusal, error) {
		list, err := before.Entries()
		for _, k := range list {
			if k.Step == step {
				return &run.Refusal{Finding: finding.Failed("run step done", finding.Values{"step": step, "ids": []string{"M3"}}), By: k.Who, At: k.Time}, nil
			}
		}
		return nil, err
	}
}

// Eight processes do the same steps at the same time: each step is done once, the
// others see who was first, and there is one chain.
func TestEightProcesses(t *testing.T) {
	t.Parallel()
	stores := several(t, inDatabase(t), 8)
	id := added(t, stores[0], headRun)
	steps := testkit.Samples(12, 200)
	var taken, refused atomic.Int64
	var tablets sync.WaitGroup
	for k, s := range stores {
		tablets.Go(func() {
			for step := 1; step <= steps; step++ {
				e := run.Entry{ID: fmt.Sprint(k, "-", step), Act: run.Done, Step: step, Who: fmt.Sprint("W", k), Time: noon}
				switch a, err := s.Append(id, e, onceEach(step)); {
				case err != nil:
					t.Error(err)
				case a.Refusal != nil:
					refused.Add(1)
				default:
					taken.Add(1)
				}
			}
		})
	}
	tablets.Wait()
	if int(taken.Load()) != steps || int(refused.Load()) != 7*steps {
		t.Errorf("%d taken and %d refused of %d steps", taken.Load(), refused.Load(), steps)
	}
	kept, err := stores[7].Entries(id, 0)
	if err != nil || len(kept) != steps {
		t.Fatal(len(kept), err)
	}
	for i, k := range kept {
		if k.Version != i+1 || k.Step != i+1 {
			t.Errorf("step %d at %d", k.Step, i+1)
		}
	}
	if head := sound(t, stores[3]); int(head.Place) != steps+2 {
		t.Error(head)
	}
}

// One entry that is sent to two processes at the same time counts once, and
// both give the same answer.
func TestSameEntryToTwoProcesses(t *testing.T) {
	t.Parallel()
	stores := several(t, inDatabase(t), 2)
	id := added(t, stores[0], headRun)
	for n := range 10 {
		answers := make([]Answer, 2)
		var both sync.WaitGroup
		for k, s := range stores {
			both.Go(func() {
				e := done(fmt.Sprint("e", n), n+1)
				e.Time = noon.Add(time.Duration(k) * time.Second) // each process has its own clock
				var err error
				if answers[k], err = s.Append(id, e, nil); err != nil {
					t.Error(err)
				}
			})
		}
		both.Wait()
		if answers[0].Again == answers[1].Again || answers[0].Version != n+1 || answers[1].Version != n+1 || answers[0].Head != answers[1].Head {
			t.Error(answers)
		}
	}
	if head := sound(t, stores[1]); head.Place != 12 {
		t.Error(head)
	}
}

// Processes that make a new record at the same time make only one.
func TestFirstStartOfMany(t *testing.T) {
	t.Parallel()
	at := inDatabase(t)
	var all sync.WaitGroup
	for range 6 {
		all.Go(func() {
			s, err := Open(at)
			if err != nil {
				t.Error(err)
				return
			}
			s.Close()
		})
	}
	all.Wait()
	if head := sound(t, opened(t, at)); head.Place != 1 {
		t.Error(head)
	}
}

// tapping taps on two processes until it is told to stop, resends what was not
// answered, and returns what was confirmed.
func tapping(t *testing.T, stores []*Store, id string, stop <-chan bool) (confirmed func() []string) {
	var mu sync.Mutex
	var list []string
	var tablets sync.WaitGroup
	for k := range 4 {
		s := stores[k%len(stores)]
		tablets.Go(func() {
			for n := 0; ; n++ {
				e := run.Entry{ID: fmt.Sprint(k, "-", n), Act: run.Remark, Who: fmt.Sprint("W", k), Time: noon}
				for {
					_, err := s.Append(id, e, nil)
					if err == nil {
						break
					}
					if !errors.Is(err, Away) {
						t.Error(err)
					}
					time.Sleep(20 * time.Millisecond)
				}
				mu.Lock()
				list = append(list, e.ID)
				mu.Unlock()
				select {
				case <-stop:
					return
				default:
				}
			}
		})
	}
	return func() []string { tablets.Wait(); return list }
}

// The database is stopped and killed while two processes tap, and started
// again: they continue by themselves, and no confirmed entry is lost or
// duplicated.
func TestDatabaseGoesAway(t *testing.T) {
	t.Parallel()
	server := servertest.Start(t)
	at := Place{Address: server.Address("postgres")}
	stores := several(t, at, 2)
	id := added(t, stores[0], headRun)
	stop := make(chan bool)
	confirmed := tapping(t, stores, id, stop)
	for n := range testkit.Samples(2, 20) {
		time.Sleep(100 * time.Millisecond)
		if n%2 == 0 {
			server.Kill()
		} else {
			server.Stop()
		}
		if _, err := stores[0].Head(); !errors.Is(err, Away) {
			t.Error(err)
		}
		server.Again(t)
	}
	time.Sleep(100 * time.Millisecond)
	close(stop)
	list := confirmed()
	checkKept(t, at, list)
	t.Logf("%d entries confirmed", len(list))
}

// All processes are notified of what one writes, even after the database was
// unreachable.
func TestWatch(t *testing.T) {
	t.Parallel()
	server := servertest.Start(t)
	stores := several(t, Place{Address: server.Address("postgres")}, 2)
	id := added(t, stores[0], headRun)
	ctx, end := context.WithCancel(t.Context())
	defer end()
	changed, lost := make(chan bool, 100), make(chan error, 100)
	go stores[1].Watch(ctx, func() { changed <- true }, func(err error) { lost <- err })
	<-changed // it listens
	appended(t, stores[0], id, done("a", 1))
	<-changed
	list, latest, err := stores[1].Changes(1)
	if err != nil || latest != 3 || len(list) != 1 || list[0] != (Change{ID: id, Begun: true, Version: 1}) {
		t.Error(list, latest, err)
	}
	server.Kill()
	if err := <-lost; !errors.Is(err, Away) {
		t.Error(err)
	}
	server.Again(t)
	<-changed
	for _, s := range stores { // a tap may be needed to detect a broken connection
		for {
			if _, err := s.Append(id, done(fmt.Sprintf("after %p", s), 2), nil); err == nil {
				break
			} else if !errors.Is(err, Away) {
				t.Fatal(err)
			}
		}
	}
	<-changed
	if list, latest, err = stores[1].Changes(latest); err != nil || latest != 5 || len(list) != 1 || list[0].Begun || list[0].Version != 3 {
		t.Error(list, latest, err)
	}
}

// A process that stops in the middle of writing delays the others only for a
// moment: its entries are not kept, and can be kept later.
func TestWriterThatHangs(t *testing.T) {
	t.Parallel()
	at := Place{Address: servertest.OfPackage(t).Database(t)} // in a shared database it would block other tests
	s := opened(t, Place{Address: at.Address + "&lock_timeout=200ms"})
	other := opened(t, Place{Address: at.Address + "&idle_in_transaction_session_timeout=1s"})
	id := added(t, s, headRun)
	hangs, goOn := make(chan bool), make(chan bool)
	ended := make(chan error)
	go func() {
		_, err := other.Append(id, done("b", 1), func(Before) (*run.Refusal, error) { hangs <- true; <-goOn; return nil, nil })
		ended <- err
	}()
	<-hangs
	if _, err := s.Append(id, done("a", 1), nil); !errors.Is(err, Away) {
		t.Error(err)
	}
	for {
		if _, err := s.Append(id, done("a", 1), nil); err == nil {
			break
		}
	}
	goOn <- true
	if err := <-ended; !errors.Is(err, Away) {
		t.Error(err)
	}
	if head := sound(t, s); head.Place != 3 {
		t.Error(head)
	}
}

// An older program that runs while a newer one changes the schema stops
// writing.
func TestSchemaChangesMeanwhile(t *testing.T) {
	t.Parallel()
	at := inDatabase(t)
	s := opened(t, at)
	id := added(t, s, headRun)
	newer := withSchema(t, at, append(s.engine.Migrations(), "CREATE TABLE later (a integer)"))
	if err := newer.startWriting(); err != nil {
		t.Fatal(err)
	}
	closed(t, newer)
	if _, err := s.Append(id, done("a", 1), nil); !errors.Is(err, NewerStore) {
		t.Error(err)
	}
}

// No error contains the password, whatever is wrong with the address.
func TestNoPasswordIsShown(t *testing.T) {
	t.Parallel()
	at := inDatabase(t)
	const secret = servertest.Password
	for name, c := range map[string]struct {
		address string
		want    error
	}{
		"another scheme":    {"mysql://me:" + secret + "@127.0.0.1/x", BadAddress},
		"no address":        {secret, BadAddress},
		"a slash in it":     {"postgres://me:" + secret + "/a@127.0.0.1/x", BadAddress},
		"signs":             {"postgres://me:%" + secret + "@127.0.0.1/x", BadAddress},
		"port":              {"postgres://me:" + secret + "@127.0.0.1:99999/x", BadAddress},
		"setting":           {"postgres://me:" + secret + "@127.0.0.1/x?sslmode=perhaps", BadAddress},
		"nobody there":      {"postgres://me:" + secret + "@127.0.0.1:1/x", Away},
		"no such host":      {"postgres://me:" + secret + "@nowhere.invalid/x", Away},
		"another password":  {strings.Replace(at.Address, secret, secret+"7", 1), Away},
		"no such database":  {strings.Replace(at.Address, "/postgres", "/nothing", 1), Away},
		"no record":         {at.Address, NoRecordThere},
		"no such user":      {strings.Replace(at.Address, "drawdown:", "you:", 1), Away},
		"unknown parameter": {at.Address + "&colour=blue", Away},
	} {
		_, err := OpenToRead(Place{Address: c.address})
		if !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
		if err == nil {
			continue
		}
		said := fmt.Sprintf("%v %+v %s", err, err, words.English().Error(err))
		if strings.Contains(said, secret) {
			t.Errorf("%s: the password is printed: %s", name, said)
		}
		t.Log(words.English().Error(err))
	}
}

// A server that does not wait for its disk would lose confirmed entries.
func TestServerWithoutSync(t *testing.T) {
	t.Parallel()
	server := servertest.Start(t)
	address := server.Address("postgres")
	server.Do(t, address, "ALTER SYSTEM SET fsync = off")
	server.Stop()
	server.Again(t)
	if _, err := Open(Place{Address: address}); !errors.Is(err, NoSync) {
		t.Error(err)
	}
	server.Do(t, address, "ALTER SYSTEM RESET fsync")
	server.Do(t, address, "ALTER SYSTEM SET synchronous_commit = off")
	server.Stop()
	server.Again(t)
	s := opened(t, Place{Address: address})
	var waits string
	if err := s.write.QueryRow("SHOW synchronous_commit").Scan(&waits); err != nil || waits != "on" {
		t.Error(waits, err)
	}
}

// A record moves from a file to a database and back by backups: it keeps its
// chain, names, photos and answers, and can be continued.
func TestFromFileToDatabaseAndBack(t *testing.T) {
	t.Parallel()
	inFile, shared, again := inTempFolder(t), inDatabase(t), inTempFolder(t)
	s := small(t, inFile)
	no := &run.Refusal{Finding: finding.Failed("run step done", finding.Values{"step": 2, "ids": []string{"M3"}}), By: "JK", At: noon}
	refused, err := s.Append("R1", done("no", 2), func(Before) (*run.Refusal, error) { return no, nil })
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Erase("MB"); err != nil {
		t.Fatal(err)
	}
	head := sound(t, s)
	backups := t.TempDir()
	move := func(from *Store, file string, to Place) *Store {
		file = filepath.Join(backups, file)
		if err := from.Backup(file); err != nil {
			t.Fatal(err)
		}
		if _, err := Restore(to, file, noon); err != nil {
			t.Fatal(err)
		}
		if _, err := Restore(to, file, noon); !to.isFile() && !errors.Is(err, RecordThere) {
			t.Error(err)
		}
		return opened(t, to)
	}
	for _, moved := range []*Store{move(s, "a.db", shared), move(opened(t, shared), "b.db", again)} {
		if got := sound(t, moved); got != head {
			t.Error(got, head)
		}
		if a, err := moved.Append("R1", done("no", 2), nil); err != nil || !a.Again || a.Refusal == nil || a.Refusal.By != refused.Refusal.By {
			t.Error(a, err)
		}
		one, err := moved.Run("R1")
		if err != nil || one.Number != "P4-0117" || !maps.Equal(one.Files, mustRun(t, s, "R1").Files) {
			t.Error(one, err)
		}
	}
	last := opened(t, elsewhere(t, shared))
	if _, err := Restore(shared, filepath.Join(backups, "a.db"), noon); !errors.Is(err, RecordThere) {
		t.Error(err)
	}
	if head := sound(t, last); head.Place != 1 {
		t.Error(head)
	}
}

func mustRun(t *testing.T, s *Store, id string) Started {
	t.Helper()
	one, err := s.Run(id)
	if err != nil {
		t.Fatal(err)
	}
	return one
}
