package main

import (
	"crypto/tls"
	"crypto/x509"
	"fmt"
	"log"
	"net/http"
	"os"
	"time"

	"golang.org/x/crypto/acme"
	"golang.org/x/crypto/acme/autocert"
	_ "golang.org/x/crypto/x509roots/fallback" // where the system has no list of authorities, as an empty container has none
)

// fromAuthority gets certificates by ACME and renews each when a third of its time
// is left. The authority asks on port 443 or 80 whether the names are ours.
func (c Certificates) fromAuthority() (*secured, error) {
	names, err := c.domains()
	if err != nil {
		return nil, err
	}
	if err := writable(c.Store); err != nil {
		return nil, fmt.Errorf("certificates can't be kept (-certs names another folder): %w", err)
	}
	client, err := c.directoryClient()
	if err != nil {
		return nil, err
	}
	manager := &autocert.Manager{
		Prompt:     autocert.AcceptTOS,
		Cache:      autocert.DirCache(c.Store),
		HostPolicy: autocert.HostWhitelist(names...),
		Client:     client,
	}
	return &secured{
		name:   names[0],
		config: manager.TLSConfig(),
		plain:  manager.HTTPHandler(toHTTPS("443")), // the authority comes to 443, whatever port that leads to here
		start:  func() { fetch(manager, names) },
	}, nil
}

// writable makes the folder and tries to write there: a certificate that can't be
// kept would be got anew at each start, which authorities allow only a few times.
func writable(dir string) error {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return err
	}
	f, err := os.CreateTemp(dir, "try-*")
	if err != nil {
		return err
	}
	f.Close()
	return os.Remove(f.Name())
}

// directoryClient speaks to the authority.
func (c Certificates) directoryClient() (*acme.Client, error) {
	client := &acme.Client{DirectoryURL: c.ACME}
	if c.ACMERoot == "" {
		return client, nil
	}
	pem, err := os.ReadFile(c.ACMERoot)
	if err != nil {
		return nil, err
	}
	roots := x509.NewCertPool()
	if !roots.AppendCertsFromPEM(pem) {
		return nil, fmt.Errorf("%s holds no certificate", c.ACMERoot)
	}
	transport := http.DefaultTransport.(*http.Transport).Clone()
	transport.TLSClientConfig = &tls.Config{RootCAs: roots}
	client.HTTPClient = &http.Client{Transport: transport, Timeout: time.Minute}
	return client, nil
}

// fetch gets the certificates before anybody asks for the page, and says in the
// log how it went; one that failed is tried again when somebody asks.
func fetch(manager *autocert.Manager, names []string) {
	for _, name := range names {
		certificate, err := manager.GetCertificate(&tls.ClientHelloInfo{
			ServerName:       name,
			CipherSuites:     []uint16{tls.TLS_ECDHE_ECDSA_WITH_AES_128_GCM_SHA256},
			SignatureSchemes: []tls.SignatureScheme{tls.ECDSAWithP256AndSHA256},
			SupportedCurves:  []tls.CurveID{tls.CurveP256},
		})
		if err != nil {
			log.Printf("no certificate for %s yet: %v", name, err)
			continue
		}
		log.Printf("certificate for %s until %s", name, certificate.Leaf.NotAfter.UTC().Format("2006-01-02 15:04:05"))
	}
}
