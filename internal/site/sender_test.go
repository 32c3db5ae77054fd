package site

import (
	"net/http/httptest"
	"testing"
	"time"
)

// line is a connection that remembers in what pieces it was given a body and until
// when it was to have sent it.
type line struct {
	*httptest.ResponseRecorder
	pieces []int
	end    time.Time
}

func (l *line) Write(b []byte) (int, error) {
	l.pieces = append(l.pieces, len(b))
	return l.ResponseRecorder.Write(b)
}

func (l *line) SetWriteDeadline(end time.Time) error {
	l.end = end
	return nil
}

// What is asked for is sent in one piece, with time for a line of 1 kB/s.
func TestHandler_SlowLine(t *testing.T) {
	s := small()
	for asked, bytes := range map[string]int{"": 60_000, "bytes=10000-": 50_000, "bytes=0-9": 10} {
		r := httptest.NewRequest("GET", corePath, nil)
		r.Header.Set("Accept-Encoding", "br")
		r.Header.Set("Range", asked)
		l := &line{ResponseRecorder: httptest.NewRecorder()}
		before := time.Now()
		s.Handler().ServeHTTP(l, r)
		if len(l.pieces) != 1 || l.pieces[0] != bytes {
			t.Errorf("%q is sent in pieces of %v bytes, want %d", asked, l.pieces, bytes)
		}
		least := time.Minute + time.Duration(bytes)*time.Millisecond
		if l.end.Before(before.Add(least)) || l.end.After(time.Now().Add(least)) {
			t.Errorf("%q may take %s, want %s", asked, l.end.Sub(before), least)
		}
	}
}
