package main

import (
	"cmp"
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"strconv"
	"time"

	"tidysump/internal/core"
	"tidysump/internal/site"
)

// Program is the server: its settings, and Run to run it.
type Program struct {
	Addr  string // to listen on, "localhost:0" for a free port; empty for localhost:8080, over HTTPS :443
	Plain string // where to lead plain HTTP to HTTPS; empty for :80 with an authority, "none" for nowhere
	Certificates
	Strict Strict    // what browsers are to remember of HTTPS
	Memory int       // MiB that it should do with; 0 for what suits the machine
	Site   string    // path of a built site's archive; empty for the one inside
	Export string    // folder to write the site into, in place of serving it
	Out    io.Writer // where the lines go that say it listens
}

// Run exports the site, or serves it until ctx ends. It returns nil after a stop
// that was asked for.
func (p Program) Run(ctx context.Context) error {
	built, err := p.site()
	if err != nil {
		return err
	}
	if p.Export != "" {
		return built.Export(p.Export)
	}
	if err := errors.Join(p.Strict.check(), limitMemory(p.Memory)); err != nil {
		return err
	}
	_, port, _ := net.SplitHostPort(cmp.Or(p.Addr, ":443")) // an address without a port fails when it is listened on
	over, err := p.Certificates.open(port)
	if err != nil {
		return err
	}
	h := handler(built, newAPI(core.Do, core.Operations()))
	if over == nil {
		return p.serve(ctx, h)
	}
	return p.serveHTTPS(ctx, h, over)
}

// site returns the site to serve.
func (p Program) site() (*site.Site, error) {
	archive := inside
	if p.Site != "" {
		var err error
		if archive, err = os.ReadFile(p.Site); err != nil {
			return nil, err
		}
	}
	if archive == nil {
		return nil, errors.New("this program was built without a site inside: use `make build`, or name one with -site")
	}
	built, err := site.Read(archive)
	if err != nil {
		return nil, fmt.Errorf("%s is no built site: %w", cmp.Or(p.Site, "what lies inside"), err)
	}
	built.Say = sayClipped
	return built, nil
}

// serve answers over plain HTTP.
func (p Program) serve(ctx context.Context, h http.Handler) error {
	if p.Strict.set() {
		return errors.New("-hsts is about HTTPS: it goes with -domain, or with -cert and -key")
	}
	at, err := listen(cmp.Or(p.Addr, "localhost:8080"), "-addr")
	if err != nil {
		return err
	}
	p.announce("http://"+net.JoinHostPort(at.host(), strconv.Itoa(at.port())), at.reach())
	return serve(ctx, newListening(at, nil, h, site.SecurityHeaders()))
}

// serveHTTPS answers over HTTPS and leads plain HTTP there.
func (p Program) serveHTTPS(ctx context.Context, h http.Handler, over *secured) error {
	at, err := listen(cmp.Or(p.Addr, ":443"), "-addr")
	if err != nil {
		return err
	}
	headers := site.SecurityHeaders()
	p.Strict.add(headers)
	all := []listening{newListening(at, over.config, p.Strict.on(h), headers)}
	plain := p.Plain
	if plain == "" && p.Domains != "" {
		plain = ":80"
	}
	if plain != "" && plain != "none" {
		other, err := listen(plain, "-plain")
		if err != nil {
			at.close()
			return err
		}
		all = append(all, newListening(other, nil, site.Secure(unread(over.plain)), site.SecurityHeaders()))
	}
	url := "https://" + over.name
	if port := at.port(); port != 443 {
		url = fmt.Sprintf("%s:%d", url, port)
	}
	p.announce(url, "")
	go over.start()
	return serve(ctx, all...)
}

// announce says where it is, and what more there is to say of that.
func (p Program) announce(url, more string) {
	fmt.Fprintf(p.Out, "Tidysump is on %s (Ctrl-C stops it)\n%s", url, more)
}

// headDeadline is how long the head of a request may take to arrive, and the hands to
// be shaken before it.
const headDeadline = 5 * time.Second

// newListening has a handler answer there, over TLS if that is configured; headers are
// those that every answer has. It gives no caller much time; a large body gets more of
// it (site.Handler).
func newListening(at listeners, over *tls.Config, h http.Handler, headers http.Header) listening {
	protocols := &http.Protocols{}
	protocols.SetHTTP1(true)
	protocols.SetUnencryptedHTTP2(over != nil) // net/http doesn't see the TLS below
	s := &http.Server{
		Handler:           h,
		ReadHeaderTimeout: headDeadline,
		ReadTimeout:       15 * time.Second,
		WriteTimeout:      60 * time.Second,
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    16 << 10,
		Protocols:         protocols,
		HTTP2:             &http.HTTP2Config{MaxReceiveBufferPerConnection: 64 << 10, MaxReceiveBufferPerStream: 64 << 10, MaxReadFrameSize: 16 << 10},
		// OPTIONS * goes to the handler too: net/http would read its body.
		DisableGeneralOptionsHandler: true,
	}
	hearOf(s)
	extra := headers.Clone()
	extra.Set("Cache-Control", "no-store") // what net/http says by itself is not for keeping
	var dress listeners
	for _, l := range at {
		dress = append(dress, dressing{l, over, extra})
	}
	return listening{dress, s}
}
