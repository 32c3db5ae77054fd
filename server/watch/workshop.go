package main

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"syscall"
	"time"
)

// archive is where the watched site is built.
const archive = "build/watch.zip"

// workshop builds the site and runs the server over it.
type workshop struct {
	front  *front
	server *exec.Cmd // the one that serves now; nil before the first
}

// build makes anew what a change asks for and lets the pages load again. What can't be
// built is said in the terminal, and the site stays as it was.
func (w *workshop) build(ctx context.Context, c change) {
	began := time.Now()
	if c.programs && !did(ctx, "make", "--no-print-directory", "--silent", "watched") {
		return
	}
	if !did(ctx, "build/builder", "-quick", "-script", "server/watch/reload.js", "-out", archive) {
		return
	}
	if err := w.serve(ctx); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return
	}
	fmt.Printf("built in %.1f s\n", time.Since(began).Seconds())
}

// did runs a program to its end and reports whether it succeeded; it says itself
// what was wrong.
func did(ctx context.Context, name string, args ...string) bool {
	c := exec.CommandContext(ctx, name, args...)
	c.Stdout, c.Stderr = os.Stdout, os.Stderr
	return c.Run() == nil
}

// address finds the server's own in what it says first.
var address = regexp.MustCompile(`http://\S+`)

// serve starts a server over the site as it is now, in place of the one before.
func (w *workshop) serve(ctx context.Context) error {
	c := exec.CommandContext(ctx, "build/server", "-addr", "localhost:0", "-site", archive)
	c.Stderr = os.Stderr
	out, err := c.StdoutPipe()
	if err != nil {
		return err
	}
	if err := c.Start(); err != nil {
		return err
	}
	line, err := bufio.NewReader(out).ReadString('\n')
	to, wrong := url.Parse(address.FindString(line))
	if err != nil || wrong != nil {
		c.Process.Kill()
		return fmt.Errorf("the server does not start: %w", c.Wait())
	}
	version, err := versionAt(to)
	if err != nil {
		c.Process.Kill()
		return err
	}
	w.front.turn(to, version)
	w.close()
	w.server = c
	return nil
}

// versionAt asks a server for the version of its site.
func versionAt(server *url.URL) (string, error) {
	resp, err := http.Get(server.JoinPath("healthz").String())
	if err != nil {
		return "", err
	}
	defer resp.Body.Close()
	body, err := io.ReadAll(resp.Body)
	return strings.TrimSpace(strings.TrimPrefix(string(body), "ok ")), err
}

// close stops the server that runs.
func (w *workshop) close() {
	if w.server == nil {
		return
	}
	w.server.Process.Signal(syscall.SIGTERM)
	go w.server.Wait() // requests under way may take their time
}
