package main

import (
	"context"
	"io/fs"
	"log"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/fsnotify/fsnotify"
)

// change says what has to be built anew.
type change struct {
	programs bool // the core and the programs, before the site
}

// quiet is how long nothing must change before what changed is built: one save of an
// editor is several changes.
const quiet = 100 * time.Millisecond

// notWatched are folders from which nothing is built, or into which it is.
var notWatched = []string{"node_modules", "build", "dist", "test", "testdata", ".git", ".ci"}

// watch reports the changes below root until ctx ends, those that come together as one.
func watch(ctx context.Context, root string) (<-chan change, error) {
	w, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	if err := addFolders(w, root); err != nil {
		w.Close()
		return nil, err
	}
	out := make(chan change, 1)
	go func() {
		defer w.Close()
		var pending *change
		for {
			var calm <-chan time.Time
			if pending != nil {
				calm = time.After(quiet)
			}
			select {
			case <-ctx.Done():
				return
			case err := <-w.Errors:
				log.Print(err)
			case e := <-w.Events:
				if c, ok := meaning(root, e); ok {
					pending = both(pending, c)
				}
			case <-calm:
				if err := addFolders(w, root); err != nil { // one of them may be new
					log.Print(err)
				}
				out <- *pending
				pending = nil
			}
		}
	}()
	return out, nil
}

// addFolders watches all folders below root; those that are watched already stay so.
func addFolders(w *fsnotify.Watcher, root string) error {
	return filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return nil // gone since it was listed
		}
		if slices.Contains(notWatched, d.Name()) && !isBuilder(path) {
			return fs.SkipDir
		}
		return w.Add(path)
	})
}

// isBuilder reports whether a folder is one of those called build that hold sources.
func isBuilder(path string) bool { return filepath.Dir(path) != "." && filepath.Base(path) == "build" }

// meaning says what an event asks for; false when it is nothing, such as a change of
// a test or of an editor's own file.
func meaning(root string, e fsnotify.Event) (change, bool) {
	if e.Op == fsnotify.Chmod {
		return change{}, false
	}
	path, err := filepath.Rel(root, e.Name)
	if err != nil {
		return change{}, false
	}
	name := filepath.Base(path)
	if strings.HasPrefix(name, ".") || strings.HasSuffix(name, "~") || strings.HasSuffix(name, ".test.js") ||
		strings.HasSuffix(name, "_test.go") || strings.HasSuffix(name, ".zip") || strings.HasPrefix(name, "new-") {
		return change{}, false
	}
	page := strings.HasPrefix(filepath.ToSlash(path), "static/")
	return change{programs: !page}, true
}

// both is what two changes ask for together.
func both(pending *change, c change) *change {
	if pending != nil {
		c.programs = c.programs || pending.programs
	}
	return &c
}
