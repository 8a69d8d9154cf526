//go:build !windows

package voice

import (
	"os/exec"
	"syscall"
)

// alone gives a program a group of its own, so that what it leaves behind ends with it.
func alone(cmd *exec.Cmd) {
	cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	cmd.Cancel = func() error { return end(cmd) }
}

// end ends the program and all that it started.
func end(cmd *exec.Cmd) error {
	if cmd.Process == nil {
		return nil
	}
	return syscall.Kill(-cmd.Process.Pid, syscall.SIGKILL)
}
