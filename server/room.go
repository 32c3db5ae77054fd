package main

import (
	"errors"
	"io"
	"slices"
	"sync"
	"time"
)

const (
	// roomForAll is how many bytes of bodies and answers may lie here at a time,
	// whether they arrive, wait or leave. Callers who send or take theirs slowly are
	// bound by it, however many they are.
	roomForAll = 16 << 20
	// roomForEach is what a request may hold beyond that: small ones, such as a plan and
	// what is asked for it, always find room.
	roomForEach = 32 << 10
	// roomGrace is for how long nobody is cut off.
	roomGrace = 2 * time.Second
)

var (
	errTooLarge = errors.New("the body is too large")
	errNoRoom   = errors.New("no room for the body")
)

// room counts the bytes that the requests hold. Where it is full, whoever has held some
// of it longest, waiting for a caller, is cut off: callers who send or take theirs slowly
// keep nobody from what does not last.
type room struct {
	most  int64
	grace time.Duration // for which nobody is cut off

	mu     sync.Mutex
	held   int64
	shares []*share // in the order in which they began
}

// share is what one request holds of the room.
type share struct {
	of    *room
	since time.Time
	held  int64
	cut   func() // ends the waiting for the caller; nil while it doesn't wait
	lost  bool   // it was cut off
}

func (r *room) share() *share {
	s := &share{of: r, since: time.Now()}
	r.mu.Lock()
	defer r.mu.Unlock()
	r.shares = append(r.shares, s)
	return s
}

// waits says how to end the waiting for the caller that begins; nil that it has ended.
func (s *share) waits(cut func()) {
	s.of.mu.Lock()
	defer s.of.mu.Unlock()
	s.cut = cut
}

// hold makes the share fit so many bytes, and reports whether there is room for them.
func (s *share) hold(bytes int) bool {
	r := s.of
	r.mu.Lock()
	defer r.mu.Unlock()
	more := max(int64(bytes)-roomForEach, 0) - s.held
	if s.lost || s.held+more > r.most {
		return false
	}
	for more > 0 && r.held+more > r.most {
		if !r.cutOff(s) {
			return false
		}
	}
	r.held += more
	s.held += more
	return true
}

// cutOff takes back what the one holds that has waited longest, but for that one share.
func (r *room) cutOff(but *share) bool {
	for _, s := range r.shares {
		if s != but && s.held > 0 && s.cut != nil && time.Since(s.since) >= r.grace {
			r.held -= s.held
			s.held, s.lost = 0, true
			s.cut()
			return true
		}
	}
	return false
}

func (s *share) release() {
	r := s.of
	r.mu.Lock()
	defer r.mu.Unlock()
	r.held -= s.held
	r.shares = slices.DeleteFunc(r.shares, func(other *share) bool { return other == s })
}

// read takes a body in; length is what its head says, less than 0 where it says
// nothing. The room grows with what has arrived, never with what is promised.
func (s *share) read(body io.Reader, length int64) ([]byte, error) {
	most := maxBody + 1 // by which a body that is too large is known
	if length >= 0 {
		most = int(length) + 1 // by which its end is seen
	}
	in := make([]byte, 0, min(most, 4<<10))
	for {
		n, err := body.Read(in[len(in):cap(in)])
		in = in[:len(in)+n]
		switch {
		case len(in) > maxBody:
			return nil, errTooLarge
		case err == io.EOF:
			return in, nil
		case err != nil:
			return nil, err
		}
		if len(in) == cap(in) {
			larger := min(2*cap(in), most)
			if !s.hold(larger) {
				return nil, errNoRoom
			}
			in = append(make([]byte, 0, larger), in...)
		}
	}
}
