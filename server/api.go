package main

import (
	"encoding/json"
	"errors"
	"io"
	"mime"
	"net/http"
	"slices"

	"github.com/gorilla/mux"

	"tidysump/internal/core"
)

// statuses says how each outcome of the core is told over HTTP.
var statuses = map[core.Outcome]int{
	core.OK:        http.StatusOK,
	core.UnknownOp: http.StatusNotFound,
	core.Malformed: http.StatusBadRequest,
	core.Refused:   http.StatusUnprocessableEntity,
	core.TooLarge:  http.StatusRequestEntityTooLarge,
	core.Crashed:   http.StatusInternalServerError,
}

// door is core.Do, or what stands in for it in a test.
type door func(op string, in []byte) ([]byte, core.Outcome)

// serveAPI answers POST /api/{op} with what the core says.
func (do door) serveAPI(w http.ResponseWriter, r *http.Request) {
	if kind := r.Header.Get("Content-Type"); !isJSON(kind) {
		refuse(w, http.StatusUnsupportedMediaType, "http.media-type", "type", kind)
		return
	}
	in, err := io.ReadAll(http.MaxBytesReader(w, r.Body, core.MaxInput))
	var tooLarge *http.MaxBytesError
	switch {
	case errors.As(err, &tooLarge):
		refuse(w, http.StatusRequestEntityTooLarge, "http.body-too-large", "most", "1 MiB")
		return
	case err != nil:
		panic(http.ErrAbortHandler) // the caller broke off: nobody is left to tell
	}
	out, outcome := do(mux.Vars(r)["op"], in)
	if outcome != core.OK {
		out = withText(out)
	}
	answer(w, statuses[outcome], out)
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
	f := finding{Code: code, Where: "/", Grade: "refuse", Values: map[string]string{}}
	for pair := range slices.Chunk(values, 2) {
		f.Values[pair[0]] = pair[1]
	}
	out, err := json.Marshal(findings{[]finding{f}})
	if err != nil {
		panic(err) // strings always marshal
	}
	answer(w, status, withText(out))
}

func answer(w http.ResponseWriter, status int, out []byte) {
	w.Header().Set("Content-Type", "application/json")
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	w.Write(append(out, '\n')) // the caller went away if this fails: nobody to tell
}
