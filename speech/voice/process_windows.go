package voice

import "os/exec"

// alone leaves a program as it is: Cancel ends it, and WaitDelay what holds its pipes.
func alone(*exec.Cmd) {}

// end ends the program.
func end(cmd *exec.Cmd) error {
	if cmd.Process == nil {
		return nil
	}
	return cmd.Process.Kill()
}
