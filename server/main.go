// Command server serves the built page, which it carries inside, together with the
// core's operations at POST /api/{op}, computed natively.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"syscall"
)

func main() {
	os.Exit(run())
}

// run is main with an exit code: 0 after a stop that was asked for, else 1.
func run() int {
	p := Program{Out: os.Stdout}
	flag.StringVar(&p.Addr, "addr", ":8080", "`address` to listen on")
	flag.StringVar(&p.Site, "site", "", "serve the built site in this `archive` in place of the one inside")
	flag.StringVar(&p.Export, "export", "", "write the site into this `folder` and stop")
	flag.Parse()

	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := p.Run(ctx); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return 0
}
