// Command watch serves the page while one works on it: what changed is built anew,
// and every page that is open loads again.
//
// A change in static/ builds the site, any other the core and the programs first. The
// site is served by the server itself, as its users have it, with two differences: it
// has one more module, which loads the page again, and no service worker, which would
// keep the version before.
package main

import (
	"context"
	"flag"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/signal"
	"syscall"
)

func main() {
	addr := flag.String("addr", "localhost:8081", "`address` to listen on")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := run(ctx, *addr); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// run watches the folder it is started in until ctx ends.
func run(ctx context.Context, addr string) error {
	changes, err := watch(ctx, ".")
	if err != nil {
		return err
	}
	listener, err := net.Listen("tcp", addr)
	if err != nil {
		return err
	}
	w := &workshop{front: &front{}}
	defer w.close()
	w.build(ctx, change{programs: true})
	server := &http.Server{Handler: w.front}
	go server.Serve(listener)
	fmt.Printf("Tidysump is on http://%s and follows your changes (Ctrl-C stops it)\n", listener.Addr())
	for {
		select {
		case <-ctx.Done():
			return server.Close()
		case c := <-changes:
			w.build(ctx, c)
		}
	}
}
