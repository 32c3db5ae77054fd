package site

import (
	"net/http/httptest"
	"testing"
	"time"
)

// line is a connection that remembers when it was to have sent what it was given.
type line struct {
	*httptest.ResponseRecorder
	ends []time.Time
}

func (l *line) SetWriteDeadline(end time.Time) error {
	l.ends = append(l.ends, end)
	return nil
}

// The time to send a body in grows with the body, not with how long it takes.
func TestHandler_Pace(t *testing.T) {
	s := small()
	r := httptest.NewRequest("GET", corePath, nil)
	l := &line{ResponseRecorder: httptest.NewRecorder()}
	before := time.Now()
	Secure(s.Handler()).ServeHTTP(l, r)
	if parts := (l.Body.Len() + 32<<10 - 1) / (32 << 10); len(l.ends) < parts {
		t.Errorf("the end moved %d times over %d parts", len(l.ends), parts)
	}
	last := before
	for _, end := range l.ends {
		if end.Before(last) || end.Before(before.Add(pace)) || end.After(time.Now().Add(pace)) {
			t.Errorf("the end was set to %s after the start", end.Sub(before))
		}
		last = end
	}
}
