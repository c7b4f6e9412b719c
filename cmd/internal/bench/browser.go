package bench

import (
	"os/exec"
	"runtime"
)

// Browse opens an address in the browser of whoever is at this machine.
func Browse(address string) error {
	name, args := "xdg-open", []string{address}
	switch runtime.GOOS {
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", address}
	case "darwin":
		name = "open"
	}
	opening := exec.Command(name, args...)
	if err := opening.Start(); err != nil {
		return err
	}
	go opening.Wait() // it may last as long as the browser
	return nil
}
