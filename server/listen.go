package main

import (
	"errors"
	"fmt"
	"net"
	"strconv"
	"syscall"
)

// listeners are where one server listens, all on one port.
type listeners []net.Listener

// listen listens on the address that a flag gave. "localhost" is every loopback
// address of this machine, so that whichever a browser tries first leads here, and to
// no other program.
func listen(addr, flag string) (listeners, error) {
	host, port, err := net.SplitHostPort(addr)
	if err == nil && host == "localhost" {
		return loopback(port, flag)
	}
	return listenOn("tcp", addr, flag)
}

// loopback listens on 127.0.0.1 and ::1, or on the one that this machine has.
func loopback(port, flag string) (listeners, error) {
	for {
		four, err := listenOn("tcp4", net.JoinHostPort("127.0.0.1", port), flag)
		if err != nil && !errors.Is(err, syscall.EADDRNOTAVAIL) {
			return nil, err
		}
		same := port
		if four != nil {
			same = strconv.Itoa(four.port())
		}
		six, err := listenOn("tcp6", net.JoinHostPort("::1", same), flag)
		switch {
		case err == nil || four != nil && missing(err):
			return append(four, six...), nil
		case four != nil && port == "0" && errors.Is(err, syscall.EADDRINUSE):
			four.close() // another port, then
		default:
			four.close()
			return nil, err
		}
	}
}

// missing reports whether an error says that the machine has no such address.
func missing(err error) bool {
	return errors.Is(err, syscall.EADDRNOTAVAIL) || errors.Is(err, syscall.EAFNOSUPPORT)
}

func listenOn(network, addr, flag string) (listeners, error) {
	l, err := net.Listen(network, addr)
	switch {
	case errors.Is(err, syscall.EADDRINUSE):
		return nil, fmt.Errorf("another program listens on %s already: stop it, or choose another address with %s (%w)", addr, flag, syscall.EADDRINUSE)
	case errors.Is(err, syscall.EACCES):
		return nil, fmt.Errorf("this user may not listen on %s: choose another address with %s", addr, flag)
	case err != nil:
		return nil, err
	}
	return listeners{l}, nil
}

func (all listeners) port() int { return all.first().Port }

func (all listeners) first() *net.TCPAddr { return all[0].Addr().(*net.TCPAddr) }

func (all listeners) close() {
	for _, l := range all {
		l.Close()
	}
}

// host is the name by which a person on this machine opens what listens there.
func (all listeners) host() string {
	if ip := all.first().IP; !ip.IsLoopback() && !ip.IsUnspecified() {
		return ip.String()
	}
	return "localhost"
}

// reach says who can open what listens there over plain HTTP, and who can keep it.
func (all listeners) reach() string {
	const keep = "HTTPS (-domain, or -cert and -key) to keep it offline.\n"
	if all.first().IP.IsLoopback() {
		return fmt.Sprintf("Only this machine can open it. -addr :%d opens it to others, who need %s", all.port(), keep)
	}
	return "Other machines can open it too. They need " + keep
}
