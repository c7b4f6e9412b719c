//go:build !windows

package servertest

import (
	"fmt"
	"os"
	"os/exec"
	"os/user"
	"strconv"
	"syscall"
)

// unprivileged is the user who runs the server if the tests run as root, which
// PostgreSQL refuses.
const unprivileged = "postgres"

func ownerIDs() (uid, gid int, needed bool) {
	if os.Getuid() != 0 {
		return 0, 0, false
	}
	who, err := user.Lookup(unprivileged)
	if err != nil {
		return 0, 0, false
	}
	uid, _ = strconv.Atoi(who.Uid)
	gid, _ = strconv.Atoi(who.Gid)
	return uid, gid, true
}

func asOwner(c *exec.Cmd) {
	c.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	if uid, gid, needed := ownerIDs(); needed {
		c.SysProcAttr.Credential = &syscall.Credential{Uid: uint32(uid), Gid: uint32(gid)}
	}
}

// endWithTests ends a server when this process has gone without saying that the server
// is over: a test run that is killed leaves none behind.
func endWithTests(pid int) (over func(), err error) {
	watch := exec.Command("sh", "-c", "read over || kill -QUIT "+strconv.Itoa(pid))
	watch.SysProcAttr = &syscall.SysProcAttr{Setpgid: true} // what ends this process spares it
	said, err := watch.StdinPipe()
	if err != nil {
		return nil, err
	}
	if err := watch.Start(); err != nil {
		return nil, err
	}
	return func() {
		fmt.Fprintln(said, "over")
		watch.Wait()
	}, nil
}

func giveAway(path string) error {
	uid, gid, needed := ownerIDs()
	if !needed {
		return nil
	}
	return os.Chown(path, uid, gid)
}
