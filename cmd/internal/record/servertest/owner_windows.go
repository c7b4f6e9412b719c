package servertest

import "os/exec"

func asOwner(*exec.Cmd) {}

func giveAway(string) error { return nil }

func endWithTests(int) (over func(), err error) { return func() {}, nil }
