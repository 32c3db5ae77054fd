package main

import (
	"errors"
	"mime"
	"net/http"
	"net/url"
	"os"
	"strconv"
	"strings"
	"time"

	"github.com/gorilla/mux"

	"tidysump/server/pages"
)

// mostQuery is the most bytes of a page's query, and mostPairs how many fields it or a
// form may have: above a calculation with the longest list, far below what is work.
const (
	mostQuery = 16 << 10
	mostPairs = 2000
)

// pagesPolicy is stricter than the app's, since the pages have no script; but they have
// forms.
const pagesPolicy = "default-src 'none'; style-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// addPages adds the pages that are computed here for browsers in which the app can't
// run. Nothing of them is kept: each says by its address, or its form, what it is of.
func (a *api) addPages(r *mux.Router) {
	p := pages.New(pages.Do(a.do))
	get := []string{http.MethodGet, http.MethodHead}
	page := func(path string, make func(pages.Ask) pages.Page, methods ...string) {
		r.Path(path).Methods(append(methods, get...)...).HandlerFunc(a.paged(p, make))
	}
	r.Path(pages.At + "here").Methods(get...).HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Cache-Control", "no-store")
		w.WriteHeader(http.StatusNoContent)
	})
	r.Path(pages.At + "style.css").Methods(get...).HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		send(w, http.StatusOK, "text/css; charset=utf-8", pages.Style)
	})
	page(pages.At, p.Home)
	page(pages.At+"bike/{name}", p.Bike)
	page(pages.At+"card", p.Card, http.MethodPost)
	page(pages.At+"calculations", p.Calculations)
	page(pages.At+"calculate/{name}", p.Calculation)
	page(pages.At+"trouble", p.Troubles)
	page(pages.At+"trouble/{name}", p.Trouble)
	page(pages.At+"aid", p.Aid)
	page(pages.At+"aid/{name}", p.Aid)
	r.PathPrefix(pages.At).HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		ask := pages.Ask{Name: strings.TrimPrefix(r.URL.Path, pages.At), Accept: r.Header.Get("Accept-Language")}
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			sendPage(w, p.Refused(ask, http.StatusMethodNotAllowed, "http.method", map[string]string{"path": r.URL.Path, "method": r.Method}))
			return
		}
		sendPage(w, p.Missing(ask))
	})
}

// paged answers with a page, under the bounds of the API: as many at once as there are
// processors, and forms and pages in the room that bodies and answers share.
func (a *api) paged(p *pages.Pages, draw func(pages.Ask) pages.Page) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		ask := pages.Ask{Name: mux.Vars(r)["name"], Accept: r.Header.Get("Accept-Language")}
		held, line := a.room.share(), http.NewResponseController(w)
		defer held.release()
		var no *noPage
		if ask.Given, no = given(w, r, held); no == nil && !a.workers.take() {
			no = tooBusy
		}
		if no == nil {
			page := a.drawn(draw, ask)
			if held.hold(len(page.HTML)) {
				held.waits(func() { line.SetWriteDeadline(time.Now()) })
				sendPage(w, page)
				return
			}
			no = tooBusy
		}
		if no == tooBusy {
			w.Header().Set("Retry-After", "1")
		}
		sendPage(w, p.Refused(ask, no.status, no.id, valuesOf(no.values)))
	}
}

// drawn has a page drawn, and gives the worker back.
func (a *api) drawn(draw func(pages.Ask) pages.Page, ask pages.Ask) pages.Page {
	defer a.workers.giveBack()
	return draw(ask)
}

// noPage says why there is none: the status, and the word for it with its values.
type noPage struct {
	status int
	id     string
	values []string
}

var tooBusy = &noPage{http.StatusServiceUnavailable, "http.busy", nil}

// given is what a page is asked: the query, or the form that is sent.
func given(w http.ResponseWriter, r *http.Request, held *share) (url.Values, *noPage) {
	text := r.URL.RawQuery
	if len(text) > mostQuery {
		return nil, &noPage{http.StatusRequestURITooLong, "http.query-too-long", []string{"most", "16 KiB"}}
	}
	if r.Method == http.MethodPost {
		kind, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type"))
		switch {
		case kind != "application/x-www-form-urlencoded":
			return nil, &noPage{http.StatusUnsupportedMediaType, "http.form-type", []string{"type", kind}}
		case r.ContentLength > maxBody:
			return nil, &noPage{http.StatusRequestEntityTooLarge, "http.body-too-large", []string{"most", "1 MiB"}}
		}
		line := http.NewResponseController(w)
		held.waits(func() { line.SetReadDeadline(time.Now()) })
		in, err := held.read(r.Body, r.ContentLength)
		held.waits(nil)
		if err == errNoRoom {
			return nil, tooBusy
		}
		if err != nil {
			status, id := bodyFault(err)
			return nil, &noPage{status, id, []string{"most", "1 MiB"}}
		}
		keepAlive(w)
		text = string(in)
	}
	if strings.Count(text, "&") >= mostPairs {
		return nil, &noPage{http.StatusRequestEntityTooLarge, "http.too-many-fields", []string{"most", strconv.Itoa(mostPairs)}}
	}
	values, err := url.ParseQuery(text)
	if err != nil {
		return nil, &noPage{http.StatusBadRequest, "http.not-whole", nil}
	}
	return values, nil
}

// bodyFault says why a body could not be taken in: the status and the word for it.
func bodyFault(err error) (status int, id string) {
	switch {
	case err == errTooLarge:
		return http.StatusRequestEntityTooLarge, "http.body-too-large"
	case err == errNoRoom:
		return http.StatusServiceUnavailable, "http.busy"
	case errors.Is(err, os.ErrDeadlineExceeded):
		return http.StatusRequestTimeout, "http.too-slow"
	}
	return http.StatusBadRequest, "http.not-whole" // who broke off doesn't hear it
}

func sendPage(w http.ResponseWriter, p pages.Page) {
	h := w.Header()
	h.Set("Content-Security-Policy", pagesPolicy)
	h.Set("Content-Language", p.Language)
	h.Set("Vary", "Accept-Language")
	send(w, p.Status, "text/html; charset=utf-8", p.HTML)
}

func send(w http.ResponseWriter, status int, kind string, body []byte) {
	h := w.Header()
	h.Set("Content-Type", kind)
	h.Set("Cache-Control", "no-store")
	h.Set("Content-Length", strconv.Itoa(len(body)))
	w.WriteHeader(status)
	w.Write(body) // the caller went away if this fails: nobody to tell
}
