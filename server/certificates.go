package main

import (
	"crypto/tls"
	"errors"
	"fmt"
	"net"
	"net/http"
	"strings"
)

// Certificates say where the certificate for HTTPS comes from: from an authority
// that is asked for it, or from two files. The zero value means plain HTTP.
type Certificates struct {
	Domains  string // names to get certificates for, by commas
	Store    string // folder that keeps them
	ACME     string // URL of the authority's directory (RFC 8555)
	ACMERoot string // file with the certificate to trust the directory by; empty for those of the system
	Cert     string // file with a certificate and its chain, in PEM
	Key      string // file with its key
}

// secured is what serving over HTTPS takes.
type secured struct {
	name   string // of the host, for a person to open
	config *tls.Config
	plain  http.Handler // for plain HTTP
	start  func()       // to run once the server listens
}

// open reads and checks what the certificates are made of; nil means plain HTTP.
func (c Certificates) open(port string) (*secured, error) {
	switch {
	case c.Domains != "" && c.Cert+c.Key != "":
		return nil, errors.New("-domain and -cert exclude each other: a certificate is got, or there is one")
	case c.Domains != "":
		return c.fromAuthority()
	case c.Cert != "" && c.Key != "":
		return c.fromFiles(port)
	case c.Cert+c.Key != "":
		return nil, errors.New("-cert and -key go together")
	}
	return nil, nil
}

// domains reads the list of names. An authority certifies none without a dot.
func (c Certificates) domains() ([]string, error) {
	var list []string
	for name := range strings.SplitSeq(c.Domains, ",") {
		name = strings.ToLower(strings.TrimSpace(name))
		if net.ParseIP(name) != nil || strings.ContainsAny(name, ":/ *") || !strings.Contains(strings.Trim(name, "."), ".") {
			return nil, fmt.Errorf("-domain %s: %q is no full name of a host, such as workshop.example", c.Domains, name)
		}
		list = append(list, name)
	}
	return list, nil
}
