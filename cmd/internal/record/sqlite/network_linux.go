package sqlite

import (
	"os"
	"strings"
	"syscall"
)

// networkSystems are the magic numbers of statfs(2), from linux/magic.h and the
// sources of the file systems.
var networkSystems = map[uint32]string{
	0x6969:     "NFS",
	0x517B:     "SMB",
	0xFF534D42: "CIFS",
	0xFE534D42: "SMB2",
	0x5346414F: "AFS",
	0x6B414653: "AFS",
	0x73757245: "Coda",
	0x564C:     "NCP",
	0x01021997: "9P",
	0x00C36400: "Ceph",
	0x0BD00BD0: "Lustre",
	0x01161970: "GFS2",
	0x7461636F: "OCFS2",
}

const fuse = 0x65735546

// NetworkSystem names the network file system of a folder; it is empty for a
// disk of this computer.
func NetworkSystem(folder string) string {
	var about syscall.Statfs_t
	if syscall.Statfs(folder, &about) != nil {
		return ""
	}
	magic := uint32(about.Type)
	if magic == fuse {
		mounts, _ := os.ReadFile("/proc/self/mounts")
		return networkMount(string(mounts), folder)
	}
	return networkSystems[magic]
}

// networkMount names the FUSE file system of a folder, if it is a network file
// system. Others, such as that of an NTFS disk, are local.
func networkMount(mounts, folder string) (system string) {
	longest := -1
	for line := range strings.Lines(mounts) {
		parts := strings.Fields(line) // device, place, type, …
		if len(parts) < 3 || len(parts[1]) <= longest {
			continue
		}
		if place := strings.TrimSuffix(parts[1], "/"); folder != place && !strings.HasPrefix(folder, place+"/") {
			continue
		}
		longest, system = len(parts[1]), parts[2]
	}
	switch system {
	case "fuse.sshfs", "fuse.glusterfs", "fuse.s3fs", "fuse.rclone", "fuse.davfs", "fuse.davfs2", "fuse.curlftpfs", "fuse.ceph", "fuse.gcsfuse":
		return strings.TrimPrefix(system, "fuse.")
	}
	return ""
}
