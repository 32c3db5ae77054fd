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
	"time"

	"golang.org/x/crypto/acme/autocert"
)

func main() {
	os.Exit(run())
}

// run is main with an exit code: 0 after a stop that was asked for, else 1.
func run() int {
	p := Program{Out: os.Stdout}
	flag.StringVar(&p.Addr, "addr", "", "`address` to listen on, such as :8080 for all of this machine's (default localhost:8080;\nover HTTPS :443)")
	flag.StringVar(&p.Site, "site", "", "serve the built site in this `archive` in place of the one inside")
	flag.StringVar(&p.Export, "export", "", "write the site into this `folder` and stop")
	flag.StringVar(&p.Domains, "domain", "", "serve over HTTPS under these `names`, separated by commas, with certificates that\nare got and renewed by ACME; whoever sets it accepts the authority's terms")
	flag.StringVar(&p.Store, "certs", "certificates", "`folder` that keeps the certificates got for -domain")
	flag.StringVar(&p.ACME, "acme", autocert.DefaultACMEDirectory, "`URL` of the authority's directory for -domain")
	flag.StringVar(&p.ACMERoot, "acme-ca", "", "`file` with the certificate by which to trust that directory (default those of the system)")
	flag.StringVar(&p.Cert, "cert", "", "serve over HTTPS with the certificate and chain in this `file`, which is read again when it changes")
	flag.StringVar(&p.Key, "key", "", "`file` with the key to -cert")
	flag.StringVar(&p.Plain, "plain", "", "`address` from which plain HTTP is led to HTTPS; none for nowhere (default :80 with -domain)")
	flag.Func("hsts", "over HTTPS, have browsers open this host no other way for so long, such as 8760h;\n`duration` 0 takes it back (default not to)", func(text string) error {
		d, err := time.ParseDuration(text)
		p.Strict.For = &d
		return err
	})
	flag.BoolVar(&p.Strict.Subdomains, "hsts-subdomains", false, "the same of all names below this host's")
	flag.IntVar(&p.Memory, "memory", 0, "`MiB` of memory to do with (default what GOMEMLIMIT says, else 128 and as much again\nfor each processor)")
	flag.Parse()

	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := p.Run(ctx); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return 0
}
