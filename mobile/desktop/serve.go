package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"runtime"

	"readback/mobile/app"
	"readback/mobile/desktop/web"
)

// serve runs the page until the program is stopped.
func serve(e env, args []string) error {
	f := flags(e, "serve")
	addr := f.String("addr", "127.0.0.1:7325", "loopback address; port 0 takes any free one")
	dir := f.String("dir", dataDir(), "folder of the jobs")
	open := f.Bool("open", true, "open the page in the browser")
	lang := f.String("lang", "en", "`language` of the guide and the page")
	if err := parse(e, f, args); err != nil {
		return err
	}
	if err := none(e, f); err != nil {
		return err
	}
	words, err := app.Language(*lang)
	if err != nil {
		return err
	}
	restore := quiet()
	defer restore()
	if _, ok := e.err.(*os.File); ok {
		e.err = os.Stderr
	}
	l, err := web.Listen(*addr)
	if err != nil {
		return err
	}
	speaker, why := openPlayer()
	if why != "" {
		fmt.Fprintln(e.err, why)
	}
	if speaker != nil {
		defer speaker.Close()
	}
	first := true
	ready := func(address string) {
		if !first {
			fmt.Fprintf(e.out, "For another browser: %s\n", address)
			return
		}
		first = false
		fmt.Fprintf(e.out, "Readback is at %s\n", address)
		if *open {
			openBrowser(e, address)
		}
	}
	err = web.Serve(e.ctx, l, web.Config{Dir: *dir, Hub: app.Config{Version: version, Lang: *lang, Speech: hearing()}, Voice: makeVoice(), Player: speaker,
		Cues: cueWAV, Greeting: words.Term("app.greeting"), Ready: ready})
	if errors.Is(err, app.ErrRunning) {
		return running(e, *dir, *open)
	}
	return err
}

// running shows the page of the program that has the folder: two on one folder would destroy each other's answers.
func running(e env, dir string, open bool) error {
	address, err := web.Running(dir)
	if err != nil {
		return fmt.Errorf("%w, and its address cannot be read (%w). End it first, or give another folder with -dir", app.ErrRunning, err)
	}
	fmt.Fprintf(e.out, "Readback is running already, with the jobs in %s. Its page: %s\n", dir, address)
	if open {
		openBrowser(e, address)
	}
	return nil
}

// openBrowser shows the page when there is a screen; the printed address does otherwise.
func openBrowser(e env, address string) {
	var cmd *exec.Cmd
	switch {
	case runtime.GOOS == "darwin":
		cmd = exec.Command("open", address)
	case runtime.GOOS == "windows":
		cmd = exec.Command("rundll32", "url.dll,FileProtocolHandler", address)
	case os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != "":
		cmd = exec.Command("xdg-open", address)
	default:
		fmt.Fprintln(e.out, "Open it in the browser of this computer.")
		return
	}
	if err := cmd.Start(); err != nil {
		fmt.Fprintln(e.out, "Open it in the browser of this computer.")
		return
	}
	go func() { _ = cmd.Wait() }() // only to leave no dead process behind
}
