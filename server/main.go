// Command server builds the page and serves it, together with the core's
// operations at POST /api/{op}, computed natively.
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
	flag.StringVar(&p.Static, "static", "static", "`folder` of the page's sources")
	flag.StringVar(&p.Core, "core", "build/core.wasm", "`path` of the core; wasm_exec.js lies beside it")
	flag.BoolVar(&p.Whole, "whole-core", false, "don't slim the core: for a version of Go that slimming doesn't know")
	flag.StringVar(&p.Cache, "cache", "build/compressed", "`folder` that keeps compressed files between starts")
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
