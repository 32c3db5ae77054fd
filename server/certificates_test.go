package main

import (
	"context"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"io"
	"math/big"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// mint writes a certificate for workshop.example and its key into the folder, as
// cert.pem and key.pem; the serial number tells one from another.
func mint(t *testing.T, dir string, serial int64) {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	form := &x509.Certificate{
		SerialNumber: big.NewInt(serial), Subject: pkix.Name{CommonName: "workshop.example"}, DNSNames: []string{"workshop.example"},
		NotBefore: time.Now().Add(-time.Hour), NotAfter: time.Now().Add(time.Hour), BasicConstraintsValid: true, IsCA: true,
	}
	cert, err := x509.CreateCertificate(rand.Reader, form, form, &key.PublicKey, key)
	if err != nil {
		t.Fatal(err)
	}
	secret, err := x509.MarshalPKCS8PrivateKey(key)
	if err != nil {
		t.Fatal(err)
	}
	for name, block := range map[string]*pem.Block{
		"cert.pem": {Type: "CERTIFICATE", Bytes: cert}, "key.pem": {Type: "PRIVATE KEY", Bytes: secret},
	} {
		if err := os.WriteFile(filepath.Join(dir, name), pem.EncodeToMemory(block), 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// trusting makes a client that trusts the certificate in the folder and finds
// workshop.example where the listener is.
func trusting(t *testing.T, dir string) *tls.Config {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, "cert.pem"))
	if err != nil {
		t.Fatal(err)
	}
	roots := x509.NewCertPool()
	if !roots.AppendCertsFromPEM(text) {
		t.Fatal("no certificate")
	}
	return &tls.Config{RootCAs: roots, ServerName: "workshop.example"}
}

func TestProgram_OwnCertificate(t *testing.T) {
	dir := t.TempDir()
	mint(t, dir, 1)
	url := started(t, "-addr", "localhost:0", "-cert", filepath.Join(dir, "cert.pem"), "-key", filepath.Join(dir, "key.pem"))
	if !strings.HasPrefix(url, "https://workshop.example:") {
		t.Fatalf("it says it is on %s", url)
	}
	at := strings.Replace(strings.TrimPrefix(url, "https://"), "workshop.example", "localhost", 1)
	client := &http.Client{Transport: &http.Transport{TLSClientConfig: trusting(t, dir), ForceAttemptHTTP2: true}}
	defer client.CloseIdleConnections()
	resp, err := client.Get("https://" + at)
	if err != nil {
		t.Fatal(err)
	}
	body, err := io.ReadAll(resp.Body)
	resp.Body.Close()
	if err != nil || resp.ProtoMajor != 2 || !strings.Contains(string(body), "Small") {
		t.Errorf("%s: %s (%v)", resp.Proto, body, err)
	}
	if got := resp.Header.Get("Strict-Transport-Security"); got != "" {
		t.Errorf("over HTTPS it says of itself: Strict-Transport-Security: %s", got)
	}
	mint(t, dir, 2)
	conn, err := tls.Dial("tcp", at, trusting(t, dir))
	if err != nil {
		t.Fatalf("after the files were renewed: %v", err)
	}
	defer conn.Close()
	if serial := conn.ConnectionState().PeerCertificates[0].SerialNumber.Int64(); serial != 2 {
		t.Errorf("after the files were renewed: certificate %d", serial)
	}
}

// While the files don't fit each other the certificate before stays.
func TestCertificateFiles_HalfRenewed(t *testing.T) {
	dir, other := t.TempDir(), t.TempDir()
	mint(t, dir, 1)
	mint(t, other, 2)
	files := &certificateFiles{cert: filepath.Join(dir, "cert.pem"), key: filepath.Join(dir, "key.pem")}
	if err := files.load(); err != nil {
		t.Fatal(err)
	}
	serial := func() int64 {
		t.Helper()
		c, err := files.get(nil)
		if err != nil {
			t.Fatal(err)
		}
		return c.Leaf.SerialNumber.Int64()
	}
	for _, step := range []struct {
		name string
		want int64
	}{{"cert.pem", 1}, {"key.pem", 2}} {
		if err := os.Rename(filepath.Join(other, step.name), filepath.Join(dir, step.name)); err != nil {
			t.Fatal(err)
		}
		if got := serial(); got != step.want {
			t.Errorf("with the new %s: certificate %d, want %d", step.name, got, step.want)
		}
	}
	if err := os.Remove(files.key); err != nil {
		t.Fatal(err)
	}
	if got := serial(); got != 2 {
		t.Errorf("without a key: certificate %d", got)
	}
}

func TestProgram_CertificateErrors(t *testing.T) {
	dir, empty := t.TempDir(), t.TempDir()
	mint(t, dir, 1)
	file := filepath.Join(dir, "cert.pem")
	for name, c := range map[string]struct {
		certificates Certificates
		want         string
	}{
		"cert alone":      {Certificates{Cert: file}, "-cert and -key go together"},
		"key alone":       {Certificates{Key: file}, "-cert and -key go together"},
		"both ways":       {Certificates{Domains: "workshop.example", Cert: file}, "exclude each other"},
		"no such file":    {Certificates{Cert: filepath.Join(empty, "cert.pem"), Key: file}, filepath.Join(empty, "cert.pem")},
		"no key":          {Certificates{Cert: file, Key: file}, "private key"},
		"no full name":    {Certificates{Domains: "workshop", Store: empty}, `"workshop"`},
		"an address":      {Certificates{Domains: "192.0.2.1", Store: empty}, `"192.0.2.1"`},
		"with a port":     {Certificates{Domains: "workshop.example:443", Store: empty}, `"workshop.example:443"`},
		"one of two":      {Certificates{Domains: "workshop.example,", Store: empty}, `""`},
		"a store in vain": {Certificates{Domains: "workshop.example", Store: filepath.Join(file, "certificates")}, "-certs"},
		"no root":         {Certificates{Domains: "workshop.example", Store: empty, ACMERoot: filepath.Join(dir, "key.pem")}, "holds no certificate"},
	} {
		p := Program{Site: archive(t), Addr: "localhost:0", Certificates: c.certificates, Out: io.Discard}
		if err := p.Run(context.Background()); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}

func TestToHTTPS(t *testing.T) {
	for _, c := range []struct{ method, port, url, want string }{
		{"GET", "443", "http://workshop.example/", "https://workshop.example/"},
		{"GET", "443", "http://workshop.example:8080/a%2Fb?c=d&e", "https://workshop.example/a%2Fb?c=d&e"},
		{"POST", "443", "http://workshop.example/api/plan", "https://workshop.example/api/plan"},
		{"GET", "8443", "http://workshop.example/", "https://workshop.example:8443/"},
		{"GET", "443", "http://192.0.2.1/", "https://192.0.2.1/"},
		{"GET", "443", "http://[2001:db8::1]/", "https://[2001:db8::1]/"},
		{"GET", "8443", "http://[2001:db8::1]:80/", "https://[2001:db8::1]:8443/"},
		{"GET", "443", "http://workshop.example//elsewhere.example/", "https://workshop.example//elsewhere.example/"},
	} {
		w := httptest.NewRecorder()
		toHTTPS(c.port).ServeHTTP(w, httptest.NewRequest(c.method, c.url, nil))
		if got := w.Header().Get("Location"); w.Code != http.StatusPermanentRedirect || got != c.want {
			t.Errorf("%s %s: %d to %s, want %s", c.method, c.url, w.Code, got, c.want)
		}
	}
	nameless := httptest.NewRequest("GET", "/", nil)
	nameless.Host = ""
	w := httptest.NewRecorder()
	toHTTPS("443").ServeHTTP(w, nameless)
	if w.Code != http.StatusBadRequest {
		t.Errorf("without a host: %d", w.Code)
	}
}
