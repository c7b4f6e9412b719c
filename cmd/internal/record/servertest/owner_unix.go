//go:build !windows

package servertest

import (
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

func giveAway(path string) error {
	uid, gid, needed := ownerIDs()
	if !needed {
		return nil
	}
	return os.Chown(path, uid, gid)
}
