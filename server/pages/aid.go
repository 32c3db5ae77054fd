package pages

import "net/http"

// kinds are the cards of first aid, each with its lines (static/app/aid/kinds.js).
var kinds = map[string][]string{
	"burn":      {"cool", "strip", "cover", "warm"},
	"eye":       {"rinse", "lids", "lenses"},
	"swallowed": {"ask", "label", "mouth"},
	"cut":       {"press", "more", "wash"},
	"injected":  {"hospital", "label", "rest"},
}

var kindsInOrder = []string{"burn", "eye", "swallowed", "cut", "injected"}

// Aid is a card of first aid, or without a name the way to all.
func (p *Pages) Aid(ask Ask) Page {
	if _, known := kinds[ask.Name]; !known && ask.Name != "" {
		return p.Missing(ask)
	}
	return p.draw(ask, http.StatusOK, "aid", func(s *speaker) shown {
		title := "aid.which"
		if ask.Name != "" {
			title = "aid-title." + ask.Name
		}
		return shown{Title: s.t(title, nil), Of: ask.Name}
	})
}
