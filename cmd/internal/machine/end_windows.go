package machine

import "os"

// endBy ends the program with the status of a program ended by Ctrl-C:
// STATUS_CONTROL_C_EXIT.
func endBy(os.Signal) { os.Exit(0xC000013A) }
