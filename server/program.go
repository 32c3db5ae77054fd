package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"syscall"
	"time"

	"tidysump/internal/core"
	"tidysump/internal/site"
)

// Program is the server: its settings, and Run to run it.
type Program struct {
	Addr   string    // to listen on; ":0" picks a free port
	Static string    // folder of the page's sources
	Core   string    // path of core.wasm
	Whole  bool      // leave the core as it is built, see site.Options.WholeCore
	Cache  string    // folder that keeps compressed files; empty for none
	Export string    // folder to write the site into, in place of serving it
	Out    io.Writer // where the line goes that says it listens
}

// stopDeadline is how long requests under way may take to end after a stop.
const stopDeadline = 5 * time.Second

// Run builds the site and exports it, or serves it until ctx ends. It returns
// nil after a stop that was asked for.
func (p Program) Run(ctx context.Context) error {
	data, err := dataFiles(p.Core)
	if err != nil {
		return err
	}
	built, err := site.Build(site.Options{
		Static: p.Static, Core: p.Core, WholeCore: p.Whole, Cache: p.Cache, Data: data, Fixed: fixedFiles(), Preload: firstScreen, Say: say,
	})
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
