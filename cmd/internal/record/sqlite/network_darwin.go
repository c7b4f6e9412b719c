package sqlite

import "syscall"

// NetworkSystem names the network file system of a folder; it is empty for a
// disk of this computer. Not tried on a real computer.
func NetworkSystem(folder string) string {
	var about syscall.Statfs_t
	if syscall.Statfs(folder, &about) != nil {
		return ""
	}
	var name []byte
	for _, c := range about.Fstypename {
		if c == 0 {
			break
		}
		name = append(name, byte(c))
	}
	switch system := string(name); system {
	case "nfs", "smbfs", "afpfs", "webdav", "ftp", "cifs":
		return system
	}
	return ""
}
