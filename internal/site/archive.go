package site

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
)

// contentsName is the archive's entry that says what the others are.
const contentsName = "site.json"

// contents is that entry.
type contents struct {
	Version string  `json:"version"`
	Built   string  `json:"built"`
	Files   []*File `json:"files"`
}

// Write writes the site as one archive: a ZIP that holds what Export writes,
// each form under its file's name (.br, .gz), uncompressed, so that a program
// which has the archive in its memory can send from there. The same site gives
// the same bytes.
func (s *Site) Write(w io.Writer) error {
	z := zip.NewWriter(w)
	list, err := json.MarshalIndent(contents{s.Version, s.Built, s.Files()}, "", "  ")
	if err != nil {
		return err
	}
	if err := store(z, contentsName, list); err != nil {
		return err
	}
	for _, f := range s.Files() {
		for name, body := range f.forms() {
			if err := store(z, name, body); err != nil {
				return err
			}
		}
	}
	return z.Close()
}

func store(z *zip.Writer, name string, body []byte) error {
	w, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Store})
	if err != nil {
		return err
	}
	_, err = w.Write(body)
	return err
}

// Read returns the site that Write wrote. Its bodies are parts of the archive,
// which must not change.
func Read(archive []byte) (*Site, error) {
	z, err := zip.NewReader(bytes.NewReader(archive), int64(len(archive)))
	if err != nil {
		return nil, err
	}
	entries := make(map[string][]byte, len(z.File))
	for _, e := range z.File {
		start, err := e.DataOffset()
		if err != nil {
			return nil, err
		}
		end := start + int64(e.UncompressedSize64)
		if e.Method != zip.Store || end > int64(len(archive)) {
			return nil, fmt.Errorf("%s is not stored as it is", e.Name)
		}
		entries[e.Name] = archive[start:end:end]
	}
	var list contents
	if err := json.Unmarshal(entries[contentsName], &list); err != nil {
		return nil, fmt.Errorf("%s: %w", contentsName, err)
	}
	s := &Site{Version: list.Version, Built: list.Built}
	for _, f := range list.Files {
		body, ok := entries[f.name()]
		if !ok {
			return nil, fmt.Errorf("the archive has no %s", f.name())
		}
		f.Body = body
		for _, e := range encodings {
			*f.Form(e.token) = entries[f.name()+e.ext]
		}
		s.Add(f)
	}
	return s, nil
}
