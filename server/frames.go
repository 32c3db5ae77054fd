package main

import (
	"bytes"
	"encoding/binary"
	"io"
	"maps"
	"net/http"
	"slices"
	"strings"

	"golang.org/x/net/http2/hpack"
)

// What of an HTTP/2 frame matters here (RFC 9113, 4.1 and 6).
const (
	frameHead         = 9 // bytes before its payload
	frameHeaders      = 0x1
	frameContinuation = 0x9
	flagEndHeaders    = 0x4
)

// frames is where net/http writes the frames of an HTTP/2 connection. It looks at the
// head of each answer, and to one that no handler gave, such as 431, it adds the headers
// that every answer has. They are added as literals that nobody remembers (RFC 7541,
// 6.2.3): what either side knows of the other's headers stays as it was.
type frames struct {
	to      io.Writer
	known   *hpack.Decoder
	head    map[string]string // what was read of the head of an answer
	extra   http.Header
	passing int    // bytes of a payload still to come that is not looked at
	part    []byte // of a frame whose end is still to come
}

func newFrames(to io.Writer, extra http.Header) *frames {
	f := &frames{to: to, head: map[string]string{}, extra: extra}
	const tableSize = 4096 // by RFC 9113; net/http keeps to it
	f.known = hpack.NewDecoder(tableSize, func(h hpack.HeaderField) { f.head[h.Name] = h.Value })
	return f
}

// missing encodes the headers that the head of an answer lacks; none where a handler
// gave it, or where it is not the final one.
func (f *frames) missing() []byte {
	if f.head[":status"] < "200" || f.head["content-security-policy"] != "" {
		return nil
	}
	var all bytes.Buffer
	literal := hpack.NewEncoder(&all)
	for _, name := range slices.Sorted(maps.Keys(f.extra)) {
		lower := strings.ToLower(name)
		if _, ok := f.head[lower]; !ok {
			literal.WriteField(hpack.HeaderField{Name: lower, Value: f.extra.Get(name), Sensitive: true})
		}
	}
	return all.Bytes()
}

// Write takes frames in pieces of any size.
func (f *frames) Write(b []byte) (int, error) {
	var out []byte
	for rest := b; len(rest) > 0; {
		if f.passing > 0 {
			n := min(f.passing, len(rest))
			out = append(out, rest[:n]...)
			f.passing -= n
			rest = rest[n:]
			continue
		}
		n := min(f.wanting(), len(rest))
		f.part = append(f.part, rest[:n]...)
		rest = rest[n:]
		if f.wanting() > 0 {
			continue
		}
		if isHead(f.part[3]) {
			f.dress()
		} else {
			f.passing = payloadOf(f.part)
		}
		out = append(out, f.part...)
		f.part = f.part[:0]
	}
	if len(out) == 0 {
		return len(b), nil
	}
	if _, err := f.to.Write(out); err != nil {
		return 0, err
	}
	return len(b), nil
}

// wanting is how many bytes the frame in part lacks: of its head, or of a head's payload.
func (f *frames) wanting() int {
	switch {
	case len(f.part) < frameHead:
		return frameHead - len(f.part)
	case isHead(f.part[3]):
		return frameHead + payloadOf(f.part) - len(f.part)
	}
	return 0
}

// dress reads the head in the frame in part, and adds the headers where they are missing
// at its end. Answers of a few short headers leave room in their frame.
func (f *frames) dress() {
	f.known.Write(f.part[frameHead:])
	if f.part[4]&flagEndHeaders == 0 {
		return
	}
	f.known.Close()
	f.part = append(f.part, f.missing()...)
	setPayload(f.part, len(f.part)-frameHead)
	clear(f.head)
}

func isHead(kind byte) bool { return kind == frameHeaders || kind == frameContinuation }

func payloadOf(frame []byte) int {
	return int(binary.BigEndian.Uint32(frame) >> 8) // its length is the first three bytes
}

func setPayload(frame []byte, length int) {
	binary.BigEndian.PutUint32(frame, uint32(length)<<8|uint32(frame[3]))
}
