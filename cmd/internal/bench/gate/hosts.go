package gate

import (
	"net"
	"net/netip"
	"os"
	"slices"
	"strconv"
	"strings"
)

// Loopback lists the names under which only this machine reaches the page.
var Loopback = []string{"127.0.0.1", "localhost", "::1"}

// IsHost reports whether a request's host is one of the names, with the port. A
// foreign page whose name points to this machine sends that name instead.
func IsHost(host string, names []string, port int) bool {
	name, at, err := net.SplitHostPort(host)
	if err != nil || at != strconv.Itoa(port) {
		return false
	}
	return slices.Contains(names, strings.ToLower(strings.TrimSuffix(name, ".")))
}

// Network lists the addresses of this machine that others can reach, and its
// name in the workshop's network; sorted, so that two lists can be compared.
func Network() []string {
	var names []string
	addresses, _ := net.InterfaceAddrs() // without them the list is empty
	for _, a := range addresses {
		prefix, err := netip.ParsePrefix(a.String())
		if err != nil || prefix.Addr().IsLoopback() || prefix.Addr().IsLinkLocalUnicast() {
			continue
		}
		names = append(names, prefix.Addr().Unmap().String())
	}
	slices.Sort(names)
	if name, err := os.Hostname(); err == nil && isHostName(name) {
		name, _, _ = strings.Cut(strings.ToLower(name), ".")
		names = append(names, name+".local")
	}
	return names
}

// isHostName reports whether a name can be used in an address and in a
// certificate.
func isHostName(name string) bool {
	return name != "" && len(name) < 64 && !strings.ContainsFunc(name, func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '.')
	})
}
