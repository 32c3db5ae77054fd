package site

import (
	"bytes"
	"io"
	"net/http"
	"time"
)

// A phone may take a minute for each answer, and as long on top as a line of this
// many bytes a second needs for the body: the core comes through over any line, and
// one that is dead doesn't hold the server up for ever.
const slowest = 1000

// inMemory is a body that lies in memory, for http.ServeContent, which copies it to
// a sender.
type inMemory struct {
	*bytes.Reader
	body []byte
}

// sender takes what it is to send from where it lies, in one go: sending the core in
// the pieces of a copy costs half as much CPU again.
type sender struct{ http.ResponseWriter }

// ReadFrom is what a copy to the sender calls.
func (s sender) ReadFrom(r io.Reader) (int64, error) {
	if part, ok := r.(*io.LimitedReader); ok {
		if from, ok := part.R.(inMemory); ok {
			start := len(from.body) - from.Len()
			n, err := s.send(from.body[start:][:part.N])
			return int64(n), err
		}
	}
	return io.Copy(struct{ io.Writer }{s.ResponseWriter}, r) // of several ranges
}

func (s sender) send(body []byte) (int, error) {
	end := time.Now().Add(time.Minute + time.Duration(len(body))*time.Second/slowest)
	http.NewResponseController(s.ResponseWriter).SetWriteDeadline(end) // where there are none it takes what it takes
	return s.Write(body)
}
