package site

import (
	"io"
	"net/http"
	"time"
)

// pace is how long a phone may take for each part of a body, of 32 kB at most. So
// the core comes through over a line of 1 kB/s, and one that takes nothing doesn't
// hold the server up.
const pace = 30 * time.Second

// paced is a body that moves the end of the time to send it on, part by part.
type paced struct {
	io.ReadSeeker
	line *http.ResponseController
}

func (p *paced) Read(b []byte) (int, error) {
	p.line.SetWriteDeadline(time.Now().Add(pace)) // a line without deadlines waits for ever
	return p.ReadSeeker.Read(b)
}
