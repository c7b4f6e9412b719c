package machine

import (
	"bufio"
	"fmt"
	"os"
	"testing"

	"golang.org/x/sys/unix"
)

// terminal opens a pseudo-terminal: what is written to tty is read from screen.
func terminal(t *testing.T) (screen, tty *os.File) {
	t.Helper()
	screen, err := os.OpenFile("/dev/ptmx", os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { screen.Close() })
	if err := unix.IoctlSetPointerInt(int(screen.Fd()), unix.TIOCSPTLCK, 0); err != nil {
		t.Fatal(err)
	}
	number, err := unix.IoctlGetInt(int(screen.Fd()), unix.TIOCGPTN)
	if err != nil {
		t.Fatal(err)
	}
	tty, err = os.OpenFile(fmt.Sprintf("/dev/pts/%d", number), os.O_RDWR|unix.O_NOCTTY, 0)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { tty.Close() })
	return screen, tty
}

// On a terminal the seconds are shown, and gone when the work is done.
func TestWaitingOnATerminal(t *testing.T) {
	screen, tty := terminal(t)
	shown := bufio.NewReader(screen)
	done := Waiting(tty)
	if got := next(t, shown, "\r1 s"); got != "\r1 s" {
		t.Errorf("after a second: %q", got)
	}
	done()
	if got := next(t, shown, "\r          \r"); got != "\r          \r" {
		t.Errorf("after the work: %q", got)
	}
}

// next reads as many characters as are wanted.
func next(t *testing.T, from *bufio.Reader, wanted string) string {
	t.Helper()
	got := make([]byte, len(wanted))
	for i := range got {
		b, err := from.ReadByte()
		if err != nil {
			t.Fatal(err)
		}
		got[i] = b
	}
	return string(got)
}
