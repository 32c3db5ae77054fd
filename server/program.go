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
	Addr   string    // to listen on; ":0" picks a free port
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
	listener, err := net.Listen("tcp", p.Addr)
	if errors.Is(err, syscall.EADDRINUSE) {
		return fmt.Errorf("another program listens on %s already: stop it, or choose another address with -addr", p.Addr)
	}
	if err != nil {
		return err
	}
	return p.serve(ctx, listener, handler(built, core.Do))
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
	built.Say = say
	return built, nil
}

// serve answers until ctx ends, then lets the requests under way finish.
func (p Program) serve(ctx context.Context, listener net.Listener, h http.Handler) error {
	server := &http.Server{
		Handler:           h,
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       15 * time.Second,
		WriteTimeout:      60 * time.Second, // the core over a slow line
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    16 << 10,
	}
	stopped := make(chan error, 1)
	go func() { stopped <- server.Serve(listener) }()
	port := listener.Addr().(*net.TCPAddr).Port
	fmt.Fprintf(p.Out, "Tidysump is on http://localhost:%d (Ctrl-C stops it)\n", port)
	select {
	case err := <-stopped:
		return err
	case <-ctx.Done():
	}
	deadline, cancel := context.WithTimeout(context.Background(), stopDeadline)
	defer cancel()
	return server.Shutdown(deadline)
}
