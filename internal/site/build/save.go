package build

import (
	"bytes"
	"os"
	"path/filepath"
)

// Save writes the site's archive to a file, whole or not at all.
func (s *Site) Save(path string) error {
	var archive bytes.Buffer
	if err := s.Write(&archive); err != nil {
		return err
	}
	return keep(path, archive.Bytes())
}

// keep writes a file whole or not at all: two builds may run at once.
func keep(path string, body []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	tmp, err := os.CreateTemp(filepath.Dir(path), "new-*")
	if err != nil {
		return err
	}
	_, err = tmp.Write(body)
	if closing := tmp.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = os.Rename(tmp.Name(), path)
	}
	if err != nil {
		os.Remove(tmp.Name())
	}
	return err
}
