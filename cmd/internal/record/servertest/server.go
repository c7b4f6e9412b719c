// Package servertest starts a PostgreSQL server for the tests of a package. It
// waits for its disk as a real one does, and can be killed and started again.
package servertest

import (
	"bytes"
	"context"
	"fmt"
	"io/fs"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"

	"drawdown/geometry/testkit"
)

// Password is the password of the test user. It must not be printed anywhere.
const Password = "Rain-17barrel"

const owner = "drawdown"

// Server is a server with its data in a temporary folder.
type Server struct {
	programs, folder string
	port             int
	process          *exec.Cmd
	ended            chan struct{} // closed when the process has ended
	databases        atomic.Int64
}

var ofPackage struct {
	sync.Once
	server *Server
	err    error
}

// OfPackage returns the one server for all tests of a package, whose TestMain
// must call End. If PostgreSQL is not installed the test is skipped.
func OfPackage(t testing.TB) *Server {
	t.Helper()
	programs := installed(t)
	ofPackage.Do(func() { ofPackage.server, ofPackage.err = newServer(programs) })
	if ofPackage.err != nil {
		t.Fatal(ofPackage.err)
	}
	return ofPackage.server
}

// End ends the server of the package.
func End() {
	if ofPackage.server != nil {
		ofPackage.server.remove()
	}
}

// Start returns a server for one test, which may kill it.
func Start(t testing.TB) *Server {
	t.Helper()
	s, err := newServer(installed(t))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(s.remove)
	return s
}

// installed returns the folder of the programs, which Debian keeps outside the
// PATH.
func installed(t testing.TB) string {
	t.Helper()
	versions, _ := filepath.Glob("/usr/lib/postgresql/*/bin/initdb")
	slices.Reverse(versions) // the newest first
	return filepath.Dir(testkit.Program(t, append([]string{"initdb"}, versions...)...))
}

func newServer(programs string) (*Server, error) {
	folder, err := os.MkdirTemp("", "drawdown-postgres-")
	if err != nil {
		return nil, err
	}
	s := &Server{programs: programs, folder: folder}
	if err := s.prepare(); err != nil {
		os.RemoveAll(folder)
		return nil, err
	}
	return s, nil
}

// prepare makes the data of a server and starts it.
func (s *Server) prepare() (err error) {
	if err := giveAway(s.folder); err != nil {
		return err
	}
	if err := s.copyEmpty(); err != nil {
		return err
	}
	if s.port, err = freePort(); err != nil {
		return err
	}
	return s.start()
}

func (s *Server) data() string { return filepath.Join(s.folder, "data") }

func freePort() (int, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return 0, err
	}
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port, nil
}

func (s *Server) command(program string, args ...string) *exec.Cmd {
	c := exec.Command(filepath.Join(s.programs, program), args...)
	c.Dir = s.folder
	asOwner(c)
	return c
}

// start starts the server on the same port, and waits until it answers. A
// killed server may have left processes that end a moment later.
func (s *Server) start() (err error) {
	const tries = 400
	for range tries {
		if s.process == nil {
			s.process = s.command("postgres", "-D", s.data(), "-p", fmt.Sprint(s.port), "-c", "listen_addresses=127.0.0.1",
				"-c", "unix_socket_directories=", "-c", "max_connections=200", "-c", "shared_buffers=32MB", "-c", "autovacuum_naptime=10s")
			if err := s.process.Start(); err != nil {
				return err
			}
			over, err := endWithTests(s.process.Process.Pid)
			if err != nil {
				s.process.Process.Kill()
				return err
			}
			s.ended = make(chan struct{})
			go func(c *exec.Cmd, ended chan struct{}) { c.Wait(); over(); close(ended) }(s.process, s.ended)
		}
		if err = s.answers(); err == nil {
			return nil
		}
		select {
		case <-s.ended:
			s.process = nil
			time.Sleep(50 * time.Millisecond)
		case <-time.After(50 * time.Millisecond):
		}
	}
	return err
}

func (s *Server) answers() error {
	conn, err := pgx.Connect(context.Background(), s.Address("postgres"))
	if err != nil {
		return err
	}
	return conn.Close(context.Background())
}

// Address returns the address of a database, including the password.
func (s *Server) Address(database string) string {
	return fmt.Sprintf("postgres://%s:%s@127.0.0.1:%d/%s?sslmode=disable", owner, Password, s.port, database)
}

// Database makes an empty database and returns its address.
func (s *Server) Database(t testing.TB) string {
	t.Helper()
	name := fmt.Sprint("d", s.databases.Add(1))
	s.Do(t, s.Address("postgres"), "CREATE DATABASE "+name)
	return s.Address(name)
}

// Schema makes an empty schema in the first database, and returns an address
// that uses it as a separate place. That is faster than a new database; all
// schemas of a database share one writer.
func (s *Server) Schema(t testing.TB) string {
	t.Helper()
	name := fmt.Sprint("s", s.databases.Add(1))
	s.Do(t, s.Address("postgres"), "CREATE SCHEMA "+name)
	return s.Address("postgres") + "&search_path=" + name
}

// Do sends statements to a database.
func (s *Server) Do(t testing.TB, address, statements string) {
	t.Helper()
	conn, err := pgx.Connect(context.Background(), address)
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close(context.Background())
	if _, err := conn.Exec(context.Background(), statements); err != nil {
		t.Fatal(err)
	}
}

// Holds reports whether a file of a table contains a text, once all is written
// to the files.
func (s *Server) Holds(t testing.TB, text string) (there bool) {
	t.Helper()
	s.Do(t, s.Address("postgres"), "CHECKPOINT")
	filepath.WalkDir(filepath.Join(s.data(), "base"), func(path string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			data, _ := os.ReadFile(path)
			there = there || bytes.Contains(data, []byte(text))
		}
		return nil // a file may have been deleted meanwhile
	})
	return there
}

// Kill ends the server at once, as a power cut does.
func (s *Server) Kill() { s.end(syscall.SIGKILL) }

// Stop ends the server as its own tool does; open connections are cut.
func (s *Server) Stop() { s.end(syscall.SIGINT) }

func (s *Server) end(how syscall.Signal) {
	if s.process != nil {
		s.process.Process.Signal(how)
		<-s.ended
		s.process = nil
	}
}

// Again starts the server after its end.
func (s *Server) Again(t testing.TB) {
	t.Helper()
	if err := s.start(); err != nil {
		t.Fatal(err)
	}
}

func (s *Server) remove() {
	s.end(syscall.SIGQUIT) // its data are no longer needed
	for range 50 {         // its processes end a moment later
		if os.RemoveAll(s.folder) == nil {
			return
		}
		time.Sleep(100 * time.Millisecond)
	}
}
