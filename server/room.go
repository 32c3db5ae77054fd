package main

import (
	"errors"
	"io"
	"sync/atomic"
)

const (
	// roomForAll is how many bytes of bodies and answers may lie here at a time,
	// whether they arrive, wait or leave. Callers who send or take theirs slowly are
	// bound by it, however many they are.
	roomForAll = 16 << 20
	// roomForEach is what a request may hold beyond that, as much as its head: small
	// ones always find room.
	roomForEach = 16 << 10
)

var (
	errTooLarge = errors.New("the body is too large")
	errNoRoom   = errors.New("no room for the body")
)

// room counts the bytes that the requests hold.
type room struct {
	most int64
	held atomic.Int64
}

// share is what one request holds of the room.
type share struct {
	of   *room
	held int64
}

func (r *room) share() *share { return &share{of: r} }

// hold makes the share fit so many bytes, and reports whether there is room for them.
func (s *share) hold(bytes int) bool {
	more := max(int64(bytes)-roomForEach, 0) - s.held
	if s.of.held.Add(more) > s.of.most && more > 0 {
		s.of.held.Add(-more)
		return false
	}
	s.held += more
	return true
}

func (s *share) release() { s.hold(0) }

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
