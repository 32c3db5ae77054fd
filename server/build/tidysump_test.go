package main

import (
	"bufio"
	"bytes"
	"debug/buildinfo"
	"debug/elf"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"

	"tidysump/internal/site"
)

// linked are the modules of which something may be in the program: nothing that
// bundles, minifies or compresses.
var linked = []string{
	"github.com/gorilla/mux",
	"golang.org/x/crypto", "golang.org/x/crypto/x509roots/fallback", "golang.org/x/net", "golang.org/x/text",
}

func TestTidysump_Links(t *testing.T) {
	info, err := buildinfo.ReadFile(built(t, "tidysump"))
	if err != nil {
		t.Fatal(err)
	}
	var modules []string
	for _, m := range info.Deps {
		modules = append(modules, m.Path)
	}
	if !slices.Equal(modules, linked) {
		t.Errorf("linked: %v, want %v", modules, linked)
	}
	list, err := exec.Command("go", "list", "-deps", "-tags=inside", "..").Output()
	if err != nil {
		t.Fatal(err)
	}
	deps := strings.Fields(string(list))
	if !slices.Contains(deps, "tidysump/internal/site") {
		t.Fatalf("not the program's packages: %v", deps)
	}
	for _, builders := range []string{"tidysump/internal/site/build", "compress/bzip2", "go/parser", "os/exec"} {
		if slices.Contains(deps, builders) {
			t.Errorf("the program links %s", builders)
		}
	}
}

// A static program asks for no loader and no library.
func TestTidysump_Static(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("programs of another form than ELF")
	}
	f, err := elf.Open(built(t, "tidysump"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for _, p := range f.Progs {
		if p.Type == elf.PT_INTERP || p.Type == elf.PT_DYNAMIC {
			t.Errorf("the program has a %v", p.Type)
		}
	}
}

// The program carries the archive that the builder wrote, and none of the page's
// sources.
func TestTidysump_Inside(t *testing.T) {
	program, err := os.ReadFile(built(t, "tidysump"))
	if err != nil {
		t.Fatal(err)
	}
	archive, err := os.ReadFile("../site.zip")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(program, archive) {
		t.Error("the archive is not inside")
	}
	source, err := os.ReadFile("../../static/app/main.js")
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(program, source) {
		t.Error("a source of the page is inside")
	}
}

// alone is a command line that runs the program as its second argument and what
// follows say, by a user without rights, with nothing to see but a folder that
// can't be written. It needs root for that.
const alone = `mount --bind "$1" "$1" && mount -o remount,bind,ro "$1" && cd "$1" && shift && exec chroot --userspec=65534:65534 . "$@"`

func TestTidysump_EmptyFolder(t *testing.T) {
	if os.Getuid() != 0 || runtime.GOOS != "linux" {
		t.Skip("only root on Linux can shut a program in")
	}
	body, err := os.ReadFile(built(t, "tidysump"))
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "tidysump"), body, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	shutIn := func(args ...string) *exec.Cmd {
		return exec.Command("unshare", append([]string{"--mount", "sh", "-c", alone, "sh", dir, "/tidysump"}, args...)...)
	}
	if out, err := shutIn("-export", "/out").CombinedOutput(); err == nil || !strings.Contains(string(out), "read-only") {
		t.Fatalf("the folder can be written: %v, %s", err, out)
	}
	if err := serves(t, shutIn("-addr", "127.0.0.1:0")); err != nil {
		t.Errorf("after SIGTERM: %v", err)
	}
}

// serves starts the program, asks it for the page, the core and a calculation, stops
// it, and returns how it ended.
func serves(t *testing.T, c *exec.Cmd) error {
	t.Helper()
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	c.Stderr = os.Stderr
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	defer c.Process.Kill()
	line, err := bufio.NewReader(out).ReadString('\n')
	url := regexp.MustCompile(`http://localhost:\d+`).FindString(line)
	if url == "" {
		t.Fatalf("it says %q (%v)", line, err)
	}
	asks(t, url)
	if err := c.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	return c.Wait()
}

// asks holds what the program at the URL answers against the archive.
func asks(t *testing.T, url string) {
	t.Helper()
	archive, err := os.ReadFile("../site.zip")
	if err != nil {
		t.Fatal(err)
	}
	want, err := site.Read(archive)
	if err != nil {
		t.Fatal(err)
	}
	answer := func(resp *http.Response, err error) string {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		defer resp.Body.Close()
		body, err := io.ReadAll(resp.Body)
		if err != nil || resp.StatusCode != http.StatusOK {
			t.Errorf("%s: %s (%v)", resp.Request.URL, resp.Status, err)
		}
		return string(body)
	}
	for _, f := range want.Files() {
		if answer(http.Get(url+f.Path)) != string(f.Body) {
			t.Errorf("%s is another one", f.Path)
		}
	}
	if got := answer(http.Get(url + "/healthz")); got != "ok "+want.Version+"\n" {
		t.Errorf("/healthz: %q", got)
	}
	forms := answer(http.Post(url+"/api/forms", "application/json", strings.NewReader("{}")))
	if !strings.HasPrefix(forms, `{"ok":`) {
		t.Errorf("the operation forms: %.100s", forms)
	}
}
