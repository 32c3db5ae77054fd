package build

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"strings"

	"tidysump/internal/site"
)

// notKept are the files that the service worker leaves to the network: itself,
// and the pictures that only a shop window or an install dialogue shows.
func notKept(path string) bool {
	return path == "/"+swName || strings.HasPrefix(path, "/icons/screenshot-")
}

// Precache returns the URL paths that the service worker keeps, in order.
func (s *Site) Precache() []string {
	var list []string
	for _, f := range s.Files() {
		if !notKept(f.Path) {
			list = append(list, f.Path)
		}
	}
	return list
}

// precacheMark stands in the worker until every file that it keeps is made.
const precacheMark = "__PRECACHE__"

// addServiceWorker makes sw.js with the list of files to keep, settles the
// version, and writes it into both sw.js and the page. The list has the SHA-256 of
// each file beside its path, so that the worker takes in nothing else: it comes last,
// since the page holds the version.
func (s *Site) addServiceWorker(o Options) error {
	worker, err := s.bundle(o, swName, map[string]any{
		versionMark:  versionMark,
		precacheMark: precacheMark,
	})
	if err != nil {
		return err
	}
	s.Version = s.hashKept(worker)
	version := func(body []byte) []byte {
		return bytes.ReplaceAll(body, []byte(versionMark), []byte(s.Version))
	}
	if err := s.addFixed(site.IndexName, version(s.File("/").Body)); err != nil {
		return err
	}
	list, err := s.precacheList()
	if err != nil {
		return err
	}
	mark := []byte(`"` + precacheMark + `"`)
	if n := bytes.Count(worker, mark); n != 1 {
		return fmt.Errorf("%s names %s %d times, and it can be put in once", swName, precacheMark, n)
	}
	return s.addFixed(swName, version(bytes.Replace(worker, mark, list, 1)))
}

// precacheList is the list of files to keep as the service worker reads it: [path,
// SHA-256 in hex].
func (s *Site) precacheList() ([]byte, error) {
	var list [][2]string
	for _, path := range s.Precache() {
		list = append(list, [2]string{path, s.File(path).Sum})
	}
	return json.Marshal(list)
}

// hashKept hashes the names and bytes of all files to be kept, and the service
// worker that keeps them: a new worker is a new version too. Page and worker
// count with the mark in place of the version.
func (s *Site) hashKept(worker []byte) string {
	h := sha256.New()
	h.Write(worker)
	for _, path := range s.Precache() {
		f := s.File(path)
		fmt.Fprintf(h, "%s %d\n", path, len(f.Body))
		h.Write(f.Body)
	}
	return hex.EncodeToString(h.Sum(nil))[:12]
}
