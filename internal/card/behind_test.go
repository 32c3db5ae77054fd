package card_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/finding"
)

// comesApart takes off what has nothing in front, again and again, and gives what came
// off: after what it is behind, a filter or strainer after what holds it, and what holds
// it after what it is behind unless that holds it too.
func comesApart(c *card.Card, ids []string) []string {
	behind, holds := map[string]string{}, map[string]string{}
	for _, b := range c.Bolts {
		behind[b.ID], holds[b.ID] = b.Behind, b.Holds
	}
	for _, f := range c.Filters {
		behind[f.ID] = f.Behind
	}
	for _, s := range c.Strain {
		behind[s.ID] = s.Behind
	}
	var off []string
	gone := func(id string) bool { return id == "" || slices.Contains(off, id) }
	free := func(id string) bool {
		held := holds[id]
		ok := gone(behind[id]) && (gone(behind[held]) || holds[behind[held]] == held)
		for _, other := range ids {
			ok = ok && (holds[other] != id || gone(other))
		}
		return ok
	}
	for range ids {
		for _, id := range ids {
			if !gone(id) && free(id) {
				off = append(off, id)
			}
		}
	}
	return off
}

// Whatever a card says is behind what: it is refused for that exactly when it could not
// come apart; and where the fault is told, something stands that is part of it.
func TestCheck_BehindAnything(t *testing.T) {
	minimal := rootFile(t, "testdata/card-minimal.json")
	rapid.Check(t, func(t *rapid.T) {
		c, _ := card.Read(minimal)
		c.Bolts, c.Filters, c.Strain = nil, nil, nil
		var ids []string
		for i := range 7 {
			ids = append(ids, string(rune('a'+i)))
		}
		behind := rapid.SampledFrom(append([]string{"", "", ""}, ids...))
		for i, id := range ids {
			switch i {
			case 0, 1:
				c.Filters = append(c.Filters, card.Filter{ID: id, Kind: card.Cartridge, Circuit: "engine", Behind: behind.Draw(t, id)})
			case 2:
				c.Strain = append(c.Strain, card.Strainer{ID: id, Circuit: "engine", Behind: behind.Draw(t, id)})
			default:
				c.Bolts = append(c.Bolts, card.Bolt{ID: id, Purpose: card.FilterCover, Circuit: "engine",
					Holds: rapid.SampledFrom([]string{"", "a", "b", "c"}).Draw(t, "of"), Behind: behind.Draw(t, id)})
			}
		}
		list := slices.DeleteFunc(card.Check(c), func(f finding.Finding) bool { return f.Grade != finding.Refuse })
		apart := comesApart(c, ids)
		if refused := len(list) > 0; refused == (len(apart) == len(ids)) {
			t.Fatalf("refused %v, and only %v come off: %+v", list, apart, c)
		}
		for _, f := range list {
			part := partAt(t, c, f.Where)
			if slices.Contains(apart, part) || f.Code != "behind-itself" && f.Code != "behind-circle" || f.Code == "behind-circle" && len(list) > 1 {
				t.Fatalf("%s at %s, which is %s; %v come off: %+v", f.Code, f.Where, part, apart, c)
			}
		}
	})
}

// partAt gives the id of the part at /bolts/2/behind and the like.
func partAt(t *rapid.T, c *card.Card, where string) string {
	words := strings.Split(where, "/")
	i, err := strconv.Atoi(words[2])
	if err != nil || len(words) != 4 || words[3] != "behind" {
		t.Fatalf("the fault is told at %s", where)
	}
	return map[string]func() string{
		"bolts":     func() string { return c.Bolts[i].ID },
		"filters":   func() string { return c.Filters[i].ID },
		"strainers": func() string { return c.Strain[i].ID },
	}[words[1]]()
}
