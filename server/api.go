package main

import (
	"encoding/json"
	"mime"
	"net/http"
	"slices"
	"strconv"
	"time"

	"github.com/gorilla/mux"

	"tidysump/internal/core"
	"tidysump/internal/finding"
	"tidysump/server/pages"
)

// maxBody is the most bytes of a request that are taken in. It is the server's own:
// what the core takes from the page, which nobody else shares, may be more.
const maxBody = 1 << 20

// maxAnswer is the most bytes of an answer: half the room, so that no caller who takes
// one slowly keeps all others from theirs.
const maxAnswer = roomForAll / 2

// door is core.Do, or what stands in for it in a test.
type door func(op string, in []byte) ([]byte, core.Outcome)

// api answers POST /api/{op} with what the core says, as many at once as there are
// processors and as the room for bodies and answers allows. What is beyond is refused
// at once and not kept waiting: who waits costs memory, and a script can ask again.
type api struct {
	do      door
	knows   map[string]bool // the core's operations
	workers workers
	room    *room
}

func newAPI(do door, operations []core.Operation) *api {
	a := &api{do: do, knows: map[string]bool{}, workers: newWorkers(), room: &room{most: roomForAll, grace: roomGrace}}
	for _, o := range operations {
		a.knows[o.Name] = true
	}
	return a
}

// serve answers a request. Whatever can be refused by what the head says is refused
// before the body is asked for. The body is read before a worker is taken: a caller
// who sends it slowly, or never, holds no worker up.
func (a *api) serve(w http.ResponseWriter, r *http.Request) {
	op := mux.Vars(r)["op"]
	kind := r.Header.Get("Content-Type")
	switch {
	case !a.knows[op]:
		out, outcome := a.do(op, nil)
		answer(w, pages.Statuses[outcome], withText(out))
		return
	case !isJSON(kind):
		refuse(w, http.StatusUnsupportedMediaType, "http.media-type", "type", kind)
		return
	case r.ContentLength > maxBody:
		refuseTooLarge(w)
		return
	case a.workers.busy():
		refuseBusy(w)
		return
	}
	held, line := a.room.share(), http.NewResponseController(w)
	defer held.release()
	held.waits(func() { line.SetReadDeadline(time.Now()) })
	in, err := held.read(r.Body, r.ContentLength)
	held.waits(nil)
	if err != nil {
		refuseBody(w, err)
		return
	}
	keepAlive(w)
	if !a.workers.take() {
		refuseBusy(w)
		return
	}
	out, outcome := a.work(op, in)
	in = nil // it may go while the answer is on its way
	held.waits(func() { line.SetWriteDeadline(time.Now()) })
	switch {
	case len(out) > maxAnswer:
		refuse(w, http.StatusRequestEntityTooLarge, "http.answer-too-large", "most", "8 MiB")
	case !held.hold(len(out)):
		refuseBusy(w)
	default:
		answer(w, pages.Statuses[outcome], out)
	}
}

// work has the core answer, and gives the worker back.
func (a *api) work(op string, in []byte) ([]byte, core.Outcome) {
	defer a.workers.giveBack()
	out, outcome := a.do(op, in)
	if outcome != core.OK {
		out = withText(out)
	}
	return out, outcome
}

// refuseBody says why the body of a request could not be taken in.
func refuseBody(w http.ResponseWriter, err error) {
	switch status, code := bodyFault(err); status {
	case http.StatusRequestEntityTooLarge:
		refuseTooLarge(w)
	case http.StatusServiceUnavailable:
		refuseBusy(w)
	default:
		refuse(w, status, code)
	}
}

func refuseTooLarge(w http.ResponseWriter) {
	refuse(w, http.StatusRequestEntityTooLarge, "http.body-too-large", "most", "1 MiB")
}

func refuseBusy(w http.ResponseWriter) {
	w.Header().Set("Retry-After", "1") // second: a call takes less
	refuse(w, http.StatusServiceUnavailable, "http.busy")
}

// refuseAPI answers what is no POST to /api/{op}.
func refuseAPI(w http.ResponseWriter, r *http.Request) {
	if r.Method == http.MethodPost {
		refuse(w, http.StatusNotFound, "http.not-found", "path", r.URL.Path)
		return
	}
	w.Header().Set("Allow", http.MethodPost)
	refuse(w, http.StatusMethodNotAllowed, "http.method", "path", r.URL.Path, "method", r.Method)
}

// isJSON accepts application/json, and a request that doesn't say.
func isJSON(contentType string) bool {
	if contentType == "" {
		return true
	}
	media, _, err := mime.ParseMediaType(contentType)
	return err == nil && media == "application/json"
}

// refuse answers with one finding about the request as a whole; values are pairs
// of name and value.
func refuse(w http.ResponseWriter, status int, code string, values ...string) {
	f := told{Code: code, Where: "/", Grade: "refuse", Values: valuesOf(values)}
	out, err := json.Marshal(findings{[]told{f}})
	if err != nil {
		panic(err) // strings always marshal
	}
	answer(w, status, withText(out))
}

// valuesOf makes values of pairs of name and value, each cut short.
func valuesOf(pairs []string) map[string]string {
	v := map[string]string{}
	for pair := range slices.Chunk(pairs, 2) {
		v[pair[0]] = finding.Clip(pair[1])
	}
	return v
}

func answer(w http.ResponseWriter, status int, out []byte) {
	w.Header().Set("Content-Type", "application/json")
	w.Header().Set("Cache-Control", "no-store")
	w.Header().Set("Content-Length", strconv.Itoa(len(out)+1))
	w.WriteHeader(status)
	w.Write(append(out, '\n')) // the caller went away if this fails: nobody to tell
}
