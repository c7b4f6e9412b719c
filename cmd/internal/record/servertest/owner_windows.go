package servertest

import "os/exec"

func asOwner(*exec.Cmd) {}

func giveAway(string) error { return nil }
