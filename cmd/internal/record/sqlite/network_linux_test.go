package sqlite

import "testing"

// Lines of /proc/self/mounts; the longest mount point that contains the folder
// counts.
func TestNetworkMounts(t *testing.T) {
	t.Parallel()
	const mounts = "/dev/sda1 / ext4 rw 0 0\nshop@host:/data /mnt/shop fuse.sshfs rw 0 0\n/dev/sdb1 /mnt/shop/disk fuseblk rw 0 0\nbroken\n"
	for folder, want := range map[string]string{
		"/home/a": "", "/mnt/shop": "sshfs", "/mnt/shop/records": "sshfs", "/mnt/shopping": "", "/mnt/shop/disk/records": "",
	} {
		if got := networkMount(mounts, folder); got != want {
			t.Errorf("%s: %q, want %q", folder, got, want)
		}
	}
	if got := NetworkSystem(t.TempDir()); got != "" {
		t.Error("a temporary folder is on", got)
	}
	// linux/magic.h: value from memory.
	for magic, want := range map[uint32]string{0x6969: "NFS", 0xff534d42: "CIFS", 0xef53: ""} {
		if got := networkSystems[magic]; got != want {
			t.Errorf("%x: %q", magic, got)
		}
	}
}
