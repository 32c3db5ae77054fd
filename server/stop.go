package main

import (
	"context"
	"net"
	"net/http"
	"sync"
	"time"
)

// stopDeadline is how long requests under way may take to end after a stop.
const stopDeadline = 5 * time.Second

// listening is a server and where it listens.
type listening struct {
	at     listeners
	server *http.Server
}

// serve answers until ctx ends, then lets the requests under way finish, and closes
// what is left. If one of the servers fails, all stop.
func serve(ctx context.Context, all ...listening) error {
	over, end := context.WithCancel(context.Background())
	defer end()
	stopped := make(chan error) // of which the first counts
	for _, l := range all {
		silent := &silent{connections: map[net.Conn]bool{}}
		l.server.ConnState = also(l.server.ConnState, silent.changed)
		l.server.RegisterOnShutdown(silent.close)
		for _, at := range l.at {
			go func() {
				select {
				case stopped <- l.server.Serve(at):
				case <-over.Done():
				}
			}()
		}
	}
	var failed error
	select {
	case failed = <-stopped:
	case <-ctx.Done():
	}
	deadline, cancel := context.WithTimeout(context.Background(), stopDeadline)
	defer cancel()
	var left sync.WaitGroup
	for _, l := range all {
		left.Go(func() {
			if l.server.Shutdown(deadline) != nil {
				l.server.Close() // who hangs had the time
			}
		})
	}
	left.Wait()
	return failed
}

// also calls both.
func also(a, b func(net.Conn, http.ConnState)) func(net.Conn, http.ConnState) {
	return func(c net.Conn, s http.ConnState) {
		if a != nil {
			a(c, s)
		}
		b(c, s)
	}
}

// silent are the connections on which no request has come whole yet, such as those that
// a browser opens to have them. net/http waits for them where it stops, though nothing
// is lost with them.
type silent struct {
	mu          sync.Mutex
	connections map[net.Conn]bool
	closed      bool
}

func (s *silent) changed(c net.Conn, state http.ConnState) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if state != http.StateNew {
		delete(s.connections, c)
		return
	}
	s.connections[c] = true
	if s.closed {
		c.Close()
	}
}

func (s *silent) close() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.closed = true
	for c := range s.connections {
		c.Close()
	}
}
