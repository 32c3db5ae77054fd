package build

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
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

// addServiceWorker makes sw.js with the list of files to keep, settles the
// version, and writes it into both sw.js and the page.
func (s *Site) addServiceWorker(o Options) error {
	worker, err := s.bundle(o, swName, map[string]any{
		versionMark:    versionMark,
		"__PRECACHE__": s.Precache(),
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
	return s.addFixed(swName, version(worker))
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
