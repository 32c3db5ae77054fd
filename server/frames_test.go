package main

import (
	"bytes"
	"io"
	"net/http"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/net/http2"
	"golang.org/x/net/http2/hpack"
	"pgregory.net/rapid"
)

// What comes out is what went in, in whatever pieces, but that every final answer that
// no handler gave has the headers.
func TestFrames(t *testing.T) {
	extra := http.Header{"Content-Security-Policy": {"none"}, "X-Frame-Options": {"DENY"}}
	rapid.Check(t, func(t *rapid.T) {
		var in, block bytes.Buffer
		framer, coder := http2.NewFramer(&in, nil), hpack.NewEncoder(&block)
		var want []map[string]string // the heads, in order
		var data []string
		for i := range rapid.IntRange(1, 20).Draw(t, "frames") {
			stream := uint32(2*i + 1)
			switch rapid.IntRange(0, 3).Draw(t, "kind") {
			case 0:
				text := strings.Repeat("HTTP/1.1 ", rapid.IntRange(0, 1000).Draw(t, "data"))
				framer.WriteData(stream, false, []byte(text))
				data = append(data, text)
			case 1:
				framer.WritePing(false, [8]byte{1})
			default:
				head := map[string]string{":status": rapid.SampledFrom([]string{"100", "200", "206", "400", "431"}).Draw(t, "status")}
				order := []string{":status"}
				for _, name := range []string{"content-security-policy", "x-frame-options", "date", "server"} {
					if rapid.Bool().Draw(t, name) {
						head[name] = strconv.Itoa(rapid.IntRange(0, 3).Draw(t, "value"))
						order = append(order, name)
					}
				}
				coder.SetMaxDynamicTableSize(uint32(rapid.SampledFrom([]int{0, 100, 4096}).Draw(t, "table")))
				block.Reset()
				for _, name := range order {
					coder.WriteField(hpack.HeaderField{Name: name, Value: head[name], Sensitive: rapid.Bool().Draw(t, "sensitive")})
				}
				cut := rapid.IntRange(0, block.Len()).Draw(t, "cut")
				whole := cut == block.Len()
				framer.WriteHeaders(http2.HeadersFrameParam{StreamID: stream, BlockFragment: block.Bytes()[:cut], EndHeaders: whole})
				if !whole {
					framer.WriteContinuation(stream, true, block.Bytes()[cut:])
				}
				if head[":status"] != "100" && head["content-security-policy"] == "" {
					head["content-security-policy"] = "none"
					if head["x-frame-options"] == "" {
						head["x-frame-options"] = "DENY"
					}
				}
				want = append(want, head)
			}
		}
		var out bytes.Buffer
		f := newFrames(&out, extra)
		for rest := in.Bytes(); len(rest) > 0; {
			n := rapid.IntRange(1, min(len(rest), 5000)).Draw(t, "piece")
			if written, err := f.Write(rest[:n]); written != n || err != nil {
				t.Fatalf("of %d bytes it took %d (%v)", n, written, err)
			}
			rest = rest[n:]
		}
		reader := http2.NewFramer(nil, &out)
		reader.ReadMetaHeaders = hpack.NewDecoder(4096, nil)
		for {
			frame, err := reader.ReadFrame()
			if err == io.EOF {
				break
			}
			if err != nil {
				t.Fatalf("what comes out can't be read: %v", err)
			}
			switch frame := frame.(type) {
			case *http2.DataFrame:
				if len(data) == 0 || string(frame.Data()) != data[0] {
					t.Fatalf("other data than went in")
				}
				data = data[1:]
			case *http2.MetaHeadersFrame:
				if len(want) == 0 {
					t.Fatal("a head too many")
				}
				if len(frame.Fields) != len(want[0]) {
					t.Fatalf("head %v, want %v", frame.Fields, want[0])
				}
				for _, field := range frame.Fields {
					if want[0][field.Name] != field.Value {
						t.Fatalf("head %v, want %v", frame.Fields, want[0])
					}
				}
				want = want[1:]
			}
		}
		if len(want)+len(data) > 0 {
			t.Fatalf("%d heads and %d data are missing", len(want), len(data))
		}
	})
}

// An error on the line is passed on.
func TestFrames_Broken(t *testing.T) {
	r, w := io.Pipe()
	r.Close()
	if n, err := newFrames(w, nil).Write(make([]byte, frameHead)); n != 0 || err == nil {
		t.Errorf("%d bytes (%v)", n, err)
	}
}
