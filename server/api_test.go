package main

import (
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"tidysump/internal/core"
)

// gate is a core that works until it is let go.
type gate struct {
	begun chan struct{}
	open  chan struct{}
	once  sync.Once
}

func newGate(t *testing.T) *gate {
	g := &gate{begun: make(chan struct{}, 1000), open: make(chan struct{})}
	t.Cleanup(g.letGo)
	return g
}

func (g *gate) letGo() { g.once.Do(func() { close(g.open) }) }

func (g *gate) do(op string, in []byte) ([]byte, core.Outcome) {
	g.begun <- struct{}{}
	<-g.open
	return []byte(`{"ok":1}`), core.OK
}

// busy fills every worker, and waits until each has begun.
func (g *gate) busy(t *testing.T, at string) []*socket {
	t.Helper()
	var callers []*socket
	for range runtime.GOMAXPROCS(0) {
		s := dial(t, at)
		s.say("POST /api/good HTTP/1.1", "Host: x", "Content-Length: 2", "", "{}")
		callers = append(callers, s)
		select {
		case <-g.begun:
		case <-time.After(patience):
			t.Fatal("a call with a free worker does not begin")
		}
	}
	return callers
}

// isBusy holds an answer to what is said when no worker is free.
func isBusy(t *testing.T, what string, resp *http.Response, body string) {
	t.Helper()
	var got findings
	if err := json.Unmarshal([]byte(body), &got); err != nil || len(got.Findings) != 1 || got.Findings[0].Code != "http.busy" || got.Findings[0].Text == "" {
		t.Errorf("%s: %q (%v)", what, body, err)
	}
	if resp.StatusCode != 503 || resp.Header.Get("Retry-After") != "1" {
		t.Errorf("%s: %s, Retry-After %q", what, resp.Status, resp.Header.Get("Retry-After"))
	}
}

// Beyond as many calls as there are processors the answer is 503, at once: none of the
// body is waited for.
func TestAPI_Busy(t *testing.T) {
	g := newGate(t)
	at := overSocket(t, handlerOver(g.do), nil)
	callers := g.busy(t, at)
	for what, lines := range map[string][]string{
		"with its body":      {"Content-Length: 2", "", "{}"},
		"without its body":   {"Content-Length: 100000", ""},
		"large, to come":     {"Content-Length: 1000000", ""},
		"chunked, to come":   {"Transfer-Encoding: chunked", ""},
		"that asks first":    {"Content-Length: 100", "Expect: 100-continue", ""},
		"without a body":     {""},
		"that says it is so": {"Content-Length: 0", ""},
	} {
		s := dial(t, at)
		s.say(append([]string{"POST /api/good HTTP/1.1", "Host: x"}, lines...)...)
		resp, body := s.hear("POST")
		isBusy(t, what, resp, body)
	}
	g.letGo()
	for _, s := range callers {
		if resp, body := s.hear("POST"); resp.StatusCode != 200 || body != "{\"ok\":1}\n" || resp.Close {
			t.Errorf("who was first: %s %q, closed %v", resp.Status, body, resp.Close)
		}
	}
	again := dial(t, at)
	again.say("POST /api/good HTTP/1.1", "Host: x", "Content-Length: 2", "", "{}")
	if resp, body := again.hear("POST"); resp.StatusCode != 200 {
		t.Errorf("once the workers are free: %s %s", resp.Status, body)
	}
}

// However many ask at once, no more calls are under way than there are processors, and
// each of the others hears that the server is busy.
func TestAPI_Crowd(t *testing.T) {
	var now, most atomic.Int64
	h := handlerOver(func(string, []byte) ([]byte, core.Outcome) {
		n := now.Add(1)
		for seen := most.Load(); n > seen && !most.CompareAndSwap(seen, n); seen = most.Load() {
		}
		runtime.Gosched()
		now.Add(-1)
		return []byte(`{"ok":1}`), core.OK
	})
	at := overSocket(t, h, nil)
	body := strings.Repeat(" ", maxBody)
	statuses := make(chan int, 100)
	for range cap(statuses) {
		go func() {
			resp, err := http.Post("http://"+at+"/api/good", "application/json", strings.NewReader(body))
			if err != nil { // closed while it still sent: 503 was told, and not heard
				statuses <- 503
				return
			}
			io.Copy(io.Discard, resp.Body)
			resp.Body.Close()
			statuses <- resp.StatusCode
		}()
	}
	heard := map[int]int{}
	for range cap(statuses) {
		heard[<-statuses]++
	}
	if heard[200]+heard[503] != cap(statuses) || heard[200] == 0 {
		t.Errorf("statuses: %v", heard)
	}
	if got, want := most.Load(), int64(runtime.GOMAXPROCS(0)); got > want {
		t.Errorf("%d calls at once, want %d", got, want)
	}
}

// Callers who send their bodies slowly, or never, keep nobody from the workers.
func TestAPI_SlowBodies(t *testing.T) {
	at := overSocket(t, handlerOver(echo), nil)
	for i := range 200 {
		s := dial(t, at)
		s.say("POST /api/good HTTP/1.1", "Host: x", "Content-Length: 1000000", "", fmt.Sprintf(`{"some":%d`, i))
	}
	for range 20 {
		s := dial(t, at)
		s.say("POST /api/good HTTP/1.1", "Host: x", "Content-Length: 8", "", `{"ok":1}`)
		if resp, body := s.hear("POST"); resp.StatusCode != 200 {
			t.Fatalf("beside 200 slow ones: %s %s", resp.Status, body)
		}
	}
}

// Bodies that lie here half-sent find no more room than there is, and leave room for
// small ones.
func TestAPI_HeavySlowBodies(t *testing.T) {
	a := newAPI(echo, []core.Operation{{Name: "good"}})
	// How long a body may take to arrive is not asked here.
	at := overSocket(t, handlerOverAPI(a), func(s *http.Server) { s.ReadTimeout = 0 })
	part := strings.Repeat(" ", maxBody-1000)
	refused := 0
	for range 3 * roomForAll / maxBody {
		s := dial(t, at)
		s.say("POST /api/good HTTP/1.1", "Host: x", fmt.Sprint("Content-Length: ", maxBody), "")
		before := holds(a.room)
		io.WriteString(s, part) // fails where it is closed already
		for until := time.Now().Add(patience); holds(a.room) <= before+maxBody/2 && time.Now().Before(until); {
			s.SetReadDeadline(time.Now().Add(10 * time.Millisecond))
			if _, err := s.in.Peek(12); err == nil {
				s.SetReadDeadline(time.Now().Add(patience))
				resp, body := s.hear("POST")
				isBusy(t, "without room", resp, body)
				refused++
				break
			}
		}
		if got := holds(a.room); got > roomForAll {
			t.Fatalf("bodies hold %d bytes, %d may be", got, roomForAll)
		}
	}
	if refused == 0 {
		t.Error("more bodies were taken in than there is room for")
	}
	small := dial(t, at)
	small.say("POST /api/good HTTP/1.1", "Host: x", "Content-Length: 8", "", `{"ok":1}`)
	if resp, body := small.hear("POST"); resp.StatusCode != 200 {
		t.Errorf("a small one beside them: %s %s", resp.Status, body)
	}
}

// A body that does not come in its time, or not whole, is told so.
func TestAPI_Unfinished(t *testing.T) {
	at := overSocket(t, handlerOver(echo), func(s *http.Server) { s.ReadTimeout = 100 * time.Millisecond })
	for _, c := range []struct {
		name   string
		lines  []string
		status int
		code   string
	}{
		{"too slow", []string{"Content-Length: 100", "", "{"}, 408, "http.too-slow"},
		{"too slow, chunked", []string{"Transfer-Encoding: chunked", "", "5", "12345"}, 408, "http.too-slow"},
		{"no chunk", []string{"Transfer-Encoding: chunked", "", "none", ""}, 400, "http.not-whole"},
	} {
		s := dial(t, at)
		s.say(append([]string{"POST /api/good HTTP/1.1", "Host: x"}, c.lines...)...)
		resp, body := s.hear("POST")
		if resp.StatusCode != c.status || !strings.Contains(body, c.code) || !resp.Close {
			t.Errorf("%s: %s %s, closed %v", c.name, resp.Status, body, resp.Close)
		}
		if !s.ends() {
			t.Errorf("%s: the connection stays", c.name)
		}
	}
}

// A caller is told to send its body only where the body will be read.
func TestAPI_Continue(t *testing.T) {
	at := overSocket(t, handlerOver(echo), nil)
	paths := []string{"/", "/index.html", "/nothing", "/healthz", "/api/", "/api/good", "/api/bake", "/api/good/more", "/api//good", "//", "*", "/%2e%2e/"}
	methods := []string{"GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "BREW"}
	lengths := []string{"Content-Length: 2", fmt.Sprint("Content-Length: ", maxBody), fmt.Sprint("Content-Length: ", maxBody+1), "Content-Length: 9000000000000000000", "Transfer-Encoding: chunked"}
	for _, path := range paths {
		for _, method := range methods {
			for i, length := range lengths {
				for _, kind := range []string{"application/json", "text/plain"} {
					if path == "*" && method != "OPTIONS" {
						continue // no request: told so without a handler
					}
					what := fmt.Sprint(method, " ", path, ", ", kind, ", ", length)
					s := dial(t, at)
					s.say(method+" "+path+" HTTP/1.1", "Host: x", "Content-Type: "+kind, length, "Expect: 100-continue", "")
					resp, body := s.hear(method)
					asked := path == "/api/good" && method == "POST" && kind == "application/json" && (i < 2 || i == 4)
					if (resp.StatusCode == 100) != asked {
						t.Errorf("%s: %s", what, resp.Status)
					}
					if asked {
						s.Close()
						continue
					}
					if resp.StatusCode < 200 || resp.StatusCode >= 500 || !resp.Close {
						t.Errorf("%s: %s, closed %v", what, resp.Status, resp.Close)
					}
					if method != "HEAD" && len(body) < 10 && resp.StatusCode >= 400 {
						t.Errorf("%s: %s says %q", what, resp.Status, body)
					}
				}
			}
		}
	}
}

// A request that is too large is told so whether it says so or not.
func TestAPI_TooLarge(t *testing.T) {
	at := overSocket(t, handlerOver(echo), nil)
	s := dial(t, at)
	s.say("POST /api/good HTTP/1.1", "Host: x", "Transfer-Encoding: chunked", "")
	go func() {
		for { // for as long as anybody listens
			if _, err := fmt.Fprintf(s, "%x\r\n%s\r\n", 10_000, strings.Repeat(" ", 10_000)); err != nil {
				return
			}
		}
	}()
	if resp, body := s.hear("POST"); resp.StatusCode != 413 || !strings.Contains(body, "http.body-too-large") || !resp.Close {
		t.Errorf("without an end: %s %s, closed %v", resp.Status, body, resp.Close)
	}
}

// An answer that is too large is not sent in part, and asking again does not help.
func TestAPI_HugeAnswer(t *testing.T) {
	for bytes, status := range map[int]int{maxAnswer: 200, maxAnswer + 1: 413} {
		at := overSocket(t, handlerOver(func(string, []byte) ([]byte, core.Outcome) {
			return make([]byte, bytes), core.OK
		}), nil)
		s := dial(t, at)
		s.say("POST /api/good HTTP/1.1", "Host: x", "Content-Length: 2", "", "{}")
		resp, body := s.hear("POST")
		if resp.StatusCode != status || (status == 413) != strings.Contains(body, "http.answer-too-large") {
			t.Errorf("%d bytes: %s, %d bytes", bytes, resp.Status, len(body))
		}
	}
}

// holds is what the requests hold.
func holds(r *room) int64 {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.held
}

// Who does not take an answer, or send a body, gives way to others in time.
func TestAPI_GiveWay(t *testing.T) {
	a := newAPI(func(string, []byte) ([]byte, core.Outcome) { return make([]byte, maxAnswer), core.OK }, []core.Operation{{Name: "large"}})
	a.room.grace = 0
	at := overSocket(t, handlerOverAPI(a), nil)
	var before []*socket
	for range 5 { // who has sent most of a body, and who has not taken an answer
		sends := dial(t, at)
		sends.say("POST /api/large HTTP/1.1", "Host: x", fmt.Sprint("Content-Length: ", maxBody), "", strings.Repeat(" ", maxBody*3/4))
		takes := dial(t, at)
		takes.say("POST /api/large HTTP/1.1", "Host: x", "Content-Length: 2", "", "{}")
		if _, err := takes.in.Peek(12); err != nil {
			t.Fatal(err)
		}
		before = append(before, sends, takes)
	}
	s := dial(t, at)
	s.say("POST /api/large HTTP/1.1", "Host: x", "Content-Length: 2", "", "{}")
	if resp, body := s.hear("POST"); resp.StatusCode != 200 || len(body) <= maxAnswer {
		t.Errorf("beside those who don't: %s, %d bytes", resp.Status, len(body))
	}
	if n, err := io.Copy(io.Discard, before[1].in); n > maxAnswer {
		t.Errorf("the first was not cut off: %d bytes (%v)", n, err)
	}
	if got := holds(a.room); got > roomForAll {
		t.Errorf("they hold %d bytes, %d may be", got, roomForAll)
	}
}

// Answers that are not taken hold no more than the room, and small ones still go out.
func TestAPI_AnswersNotTaken(t *testing.T) {
	a := newAPI(func(op string, _ []byte) ([]byte, core.Outcome) {
		if op == "small" {
			return []byte(`{"ok":1}`), core.OK
		}
		return make([]byte, maxAnswer), core.OK
	}, []core.Operation{{Name: "large"}, {Name: "small"}})
	at := overSocket(t, handlerOverAPI(a), nil)
	for range 10 {
		s := dial(t, at)
		s.say("POST /api/large HTTP/1.1", "Host: x", "Content-Length: 2", "", "{}")
		if _, err := s.in.Peek(12); err != nil { // its first line, and no more
			t.Fatal(err)
		}
		if got := holds(a.room); got > roomForAll {
			t.Fatalf("answers hold %d bytes, %d may be", got, roomForAll)
		}
	}
	s := dial(t, at)
	s.say("POST /api/small HTTP/1.1", "Host: x", "Content-Length: 2", "", "{}")
	if resp, body := s.hear("POST"); resp.StatusCode != 200 {
		t.Errorf("a small one beside them: %s %s", resp.Status, body)
	}
}
