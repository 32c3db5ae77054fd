package main

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/fsnotify/fsnotify"
)

func TestMeaning(t *testing.T) {
	for _, c := range []struct {
		path     string
		op       fsnotify.Op
		programs bool
		ok       bool
	}{
		{"static/app/main.js", fsnotify.Write, false, true},
		{"static/app/job/job.css", fsnotify.Create, false, true},
		{"static/app/job/job.js", fsnotify.Remove, false, true},
		{"static/app/job/job.js", fsnotify.Chmod, false, false},
		{"static/app/job/spoken.test.js", fsnotify.Write, false, false},
		{"static/app/job/.job.js.swp", fsnotify.Create, false, false},
		{"static/app/job/job.js~", fsnotify.Create, false, false},
		{"internal/oil/band.go", fsnotify.Write, true, true},
		{"internal/oil/band_test.go", fsnotify.Write, false, false},
		{"specs/faults.json", fsnotify.Rename, true, true},
		{"server/build/data.go", fsnotify.Write, true, true},
		{"server/site.zip", fsnotify.Write, false, false},
		{"go.mod", fsnotify.Write, true, true},
	} {
		got, ok := meaning("root", fsnotify.Event{Name: filepath.Join("root", c.path), Op: c.op})
		if ok != c.ok || got.programs != c.programs {
			t.Errorf("%v of %s: %+v, %v", c.op, c.path, got, ok)
		}
	}
}

// Changes are seen also in a folder that came after the start.
func TestWatch(t *testing.T) {
	root := t.TempDir()
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	changes, err := watch(ctx, root)
	if err != nil {
		t.Fatal(err)
	}
	next := func(what string) change {
		t.Helper()
		select {
		case c := <-changes:
			return c
		case <-time.After(time.Minute):
			t.Fatalf("no word of %s", what)
		}
		panic("unreachable")
	}
	if err := os.MkdirAll(filepath.Join(root, "static/app"), 0o755); err != nil {
		t.Fatal(err)
	}
	next("the folders")
	for _, name := range []string{"static/app/a.js", "static/app/b.js", "go.mod"} {
		if err := os.WriteFile(filepath.Join(root, name), []byte("x"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for !next("go.mod").programs { // a slow machine may report the page's files first
	}
	if err := os.WriteFile(filepath.Join(root, "static/app/a.js"), []byte("y"), 0o644); err != nil {
		t.Fatal(err)
	}
	if c := next("a page file"); c.programs {
		t.Error("a page file alone: the programs are built")
	}
}
