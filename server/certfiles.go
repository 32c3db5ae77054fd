package main

import (
	"crypto/tls"
	"fmt"
	"log"
	"os"
	"sync"
)

// fromFiles takes the certificate from two files, and takes it anew when they
// change.
func (c Certificates) fromFiles(port string) (*secured, error) {
	files := &certificateFiles{cert: c.Cert, key: c.Key}
	if err := files.load(); err != nil {
		return nil, err
	}
	name := "localhost"
	if names := files.loaded.Leaf.DNSNames; len(names) > 0 {
		name = names[0]
	}
	return &secured{
		name:   name,
		config: &tls.Config{GetCertificate: files.get, NextProtos: []string{"h2", "http/1.1"}},
		plain:  toHTTPS(port),
		start:  func() {},
	}, nil
}

// certificateFiles is a certificate and its key in files that somebody renews.
type certificateFiles struct {
	cert, key string

	mu     sync.Mutex
	read   [2]os.FileInfo // the files as they were when they were last read
	loaded *tls.Certificate
}

// get returns the certificate as the files hold it now. While they don't fit each
// other, as when only one is renewed yet, the one before stays.
func (f *certificateFiles) get(*tls.ClientHelloInfo) (*tls.Certificate, error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if now, err := f.look(); err == nil && !same(now, f.read) {
		if err := f.load(); err != nil {
			f.read = now // said once, not with each visit
			log.Printf("the certificate stays as it was: %v", err)
		}
	}
	return f.loaded, nil
}

// load reads the files.
func (f *certificateFiles) load() error {
	now, err := f.look()
	if err != nil {
		return err
	}
	loaded, err := tls.LoadX509KeyPair(f.cert, f.key)
	if err != nil {
		return fmt.Errorf("%s and %s: %w", f.cert, f.key, err)
	}
	f.read, f.loaded = now, &loaded
	return nil
}

func (f *certificateFiles) look() (now [2]os.FileInfo, err error) {
	for i, path := range []string{f.cert, f.key} {
		if now[i], err = os.Stat(path); err != nil {
			return now, err
		}
	}
	return now, nil
}

// same reports whether the files are those that were read, and unchanged.
func same(now, read [2]os.FileInfo) bool {
	for i, n := range now {
		if !os.SameFile(n, read[i]) || !n.ModTime().Equal(read[i].ModTime()) || n.Size() != read[i].Size() {
			return false
		}
	}
	return true
}
