package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"syscall"
	"time"

	"tidysump/internal/core"
	"tidysump/internal/site"
)

// Program is the server: its settings, and Run to run it.
type Program struct {
	Addr  string // to listen on, ":0" for a free port; empty for :8080, over HTTPS :443
	Plain string // where to lead plain HTTP to HTTPS; empty for :80 with an authority, "none" for nowhere
	Certificates
	Site   string    // path of a built site's archive; empty for the one inside
	Export string    // folder to write the site into, in place of serving it
	Out    io.Writer // where the line goes that says it listens
}

// stopDeadline is how long requests under way may take to end after a stop.
const stopDeadline = 5 * time.Second

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
	listener, err := listen(cmp.Or(p.Addr, ":8080"), "-addr")
	if err != nil {
		return err
	}
	p.announce(fmt.Sprintf("http://localhost:%d", listener.Addr().(*net.TCPAddr).Port))
	return serve(ctx, listening{listener, server(h)})
}

// serveHTTPS answers over HTTPS and leads plain HTTP there.
func (p Program) serveHTTPS(ctx context.Context, h http.Handler, over *secured) error {
	listener, err := listen(cmp.Or(p.Addr, ":443"), "-addr")
	if err != nil {
		return err
	}
	secure := server(h)
	secure.TLSConfig = over.config
	all := []listening{{listener, secure}}
	plain := p.Plain
	if plain == "" && p.Domains != "" {
		plain = ":80"
	}
	if plain != "" && plain != "none" {
		other, err := listen(plain, "-plain")
		if err != nil {
			listener.Close()
			return err
		}
		all = append(all, listening{other, server(over.plain)})
	}
	url := "https://" + over.name
	if port := listener.Addr().(*net.TCPAddr).Port; port != 443 {
		url = fmt.Sprintf("%s:%d", url, port)
	}
	p.announce(url)
	go over.start()
	return serve(ctx, all...)
}

func (p Program) announce(url string) {
	fmt.Fprintf(p.Out, "Tidysump is on %s (Ctrl-C stops it)\n", url)
}

// listen listens on the address that a flag gave.
func listen(addr, flag string) (net.Listener, error) {
	listener, err := net.Listen("tcp", addr)
	switch {
	case errors.Is(err, syscall.EADDRINUSE):
		return nil, fmt.Errorf("another program listens on %s already: stop it, or choose another address with %s", addr, flag)
	case errors.Is(err, syscall.EACCES):
		return nil, fmt.Errorf("this user may not listen on %s: choose another address with %s", addr, flag)
	}
	return listener, err
}

// server is a server that gives no caller much time; a large body gets more of it
// (site.Handler).
func server(h http.Handler) *http.Server {
	return &http.Server{
		Handler:           h,
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       15 * time.Second,
		WriteTimeout:      60 * time.Second,
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    16 << 10,
		// OPTIONS * goes to the handler too: net/http would read its body.
		DisableGeneralOptionsHandler: true,
	}
}

// listening is a server and where it listens.
type listening struct {
	at     net.Listener
	server *http.Server
}

func (l listening) serve() error {
	if l.server.TLSConfig != nil {
		return l.server.ServeTLS(l.at, "", "")
	}
	return l.server.Serve(l.at)
}

// serve answers until ctx ends, then lets the requests under way finish. If one of
// the servers fails, all stop.
func serve(ctx context.Context, all ...listening) error {
	stopped := make(chan error, len(all))
	for _, l := range all {
		go func() { stopped <- l.serve() }()
	}
	var failed error
	select {
	case failed = <-stopped:
	case <-ctx.Done():
	}
	deadline, cancel := context.WithTimeout(context.Background(), stopDeadline)
	defer cancel()
	for _, l := range all {
		if err := l.server.Shutdown(deadline); failed == nil {
			failed = err
		}
	}
	return failed
}
