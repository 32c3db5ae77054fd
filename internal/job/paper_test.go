package job_test

import (
	"slices"
	"strconv"
	"testing"

	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

func paper(id, second, what, text string) job.Event {
	return job.Event{ID: id, Time: "2026-11-25T10:00:" + second + ".000Z", Kind: job.Billed, What: what, Text: text}
}

// Of estimates and bills the last of each counts, by their times and not by the
// order they come in. An undone one never was, and none is what an undo at the bench
// would take back.
func TestReplay_Papers(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	events := []job.Event{
		paper("b", "20", job.Estimate, "second"),
		paper("a", "10", job.Estimate, "first"),
		paper("c", "30", job.Bill, "bill"),
		paper("d", "40", job.Bill, "slip"),
		{ID: "e", Time: "2026-11-25T10:00:05.000Z", Kind: job.Done, Step: "identify"},
		{ID: "f", Time: "2026-11-25T10:00:50.000Z", Kind: job.Undo, About: "d"},
		paper("g", "55", "letter", "?"),
	}
	s, list := replayed(c, plan.Bench{}, events)
	if s == nil {
		t.Fatal(list)
	}
	var texts []string
	for _, p := range s.Papers {
		texts = append(texts, p.Text)
	}
	if want := []string{"second", "bill"}; !slices.Equal(texts, want) {
		t.Errorf("papers %q, want %q", texts, want)
	}
	if s.LastID != "e" {
		t.Errorf("an undo would cancel %q", s.LastID)
	}
	if len(s.Findings) != 1 || s.Findings[0].Code != "unknown-word" {
		t.Errorf("findings %+v", s.Findings)
	}
}

// A job cost what its bill says, whenever that was written, else what its estimate
// says.
func TestReplay_Costs(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	estimate, bill, later := paper("a", "10", job.Estimate, ""), paper("b", "20", job.Bill, ""), paper("c", "30", job.Estimate, "")
	undo := job.Event{ID: "u", Time: "2026-11-25T10:00:40.000Z", Kind: job.Undo, About: "b"}
	for _, f := range []struct {
		name   string
		events []job.Event
		want   string
	}{
		{"nothing written", nil, ""},
		{"an estimate", []job.Event{estimate}, "a"},
		{"a bill", []job.Event{estimate, bill}, "b"},
		{"an estimate after the bill", []job.Event{estimate, bill, later}, "b"},
		{"the bill taken back", []job.Event{estimate, bill, undo}, "a"},
		{"and estimated anew", []job.Event{estimate, bill, undo, later}, "c"},
	} {
		if s, _ := replayed(c, plan.Bench{}, f.events); s.Costs != f.want {
			t.Errorf("%s: the costs are those of %q, want %q", f.name, s.Costs, f.want)
		}
	}
}

// A bill counts the oil anew, whatever its estimate said; nothing else, and no oil of
// which nothing is known.
func TestRecounted(t *testing.T) {
	c := plantest.Sample(t, "brunnveld-halvar-940")
	bench := plan.Bench{Circuits: []string{"engine", "gearbox"}}
	s, _ := replayed(c, bench, series(read("pour-engine", plan.AskPoured, "engine", "3.7 L")))
	lines := s.BillLines()
	counts := job.Recounted(lines)
	if len(counts) != 2 || counts["bill.oil @role.engine"] != "3.7 L" || counts["bill.oil @role.gearbox"] != s.Oils[1].Due[0] {
		t.Errorf("counted anew: %v", counts)
	}
	keys := map[string]bool{}
	for _, line := range lines {
		if key := line.Values["key"]; key == "" || keys[key] && line.Word == "bill.oil" {
			t.Errorf("%s has the key %q", line.Word, key)
		} else {
			keys[key] = true
		}
	}
	if !keys["bill.labour"] || !keys["part.seal @seal.flat-aluminium"] {
		t.Errorf("keys %v", keys)
	}
	c.Circuits[0].WithFilt = nil
	s, _ = replayed(c, plan.Bench{}, nil)
	if counts := job.Recounted(s.BillLines()); len(counts) > 0 {
		t.Errorf("nothing is known of the oil, and it is counted: %v", counts)
	}
}

// On a bill seals stand by kind and size, alike ones in one line, however many places
// they lie in; together they are as many as were laid out.
func TestBillLines_SealsAlikeAreOneLine(t *testing.T) {
	for _, name := range []string{"brunnveld-halvar-940", "quillane-vastro-1010", "hallowmoor-drover-1360", "tessaly-corda-570"} {
		c := plantest.Sample(t, name)
		var b plan.Bench
		for i := range c.Circuits {
			b.Circuits = append(b.Circuits, c.Circuits[i].ID)
		}
		s, list := replayed(c, b, nil)
		p, _ := plantest.Made(c, b)
		if s == nil || p == nil {
			t.Fatal(name, list)
		}
		seen := map[string]bool{}
		laidOut, billed := 0, 0
		for _, part := range p.Parts {
			if part.Values["kind"] != "" {
				laidOut += part.Count
			}
		}
		for _, line := range s.BillLines() {
			if line.Values["kind"] == "" {
				continue
			}
			billed += line.Count
			text := plantest.Text("@"+line.Word, line.Values)
			if seen[text] || line.Values["count"] != strconv.Itoa(line.Count) {
				t.Errorf("%s: %q stands there again, or counts %q and not %d", name, text, line.Values["count"], line.Count)
			}
			seen[text] = true
		}
		if billed != laidOut || billed == 0 {
			t.Errorf("%s: %d seals are billed, %d laid out", name, billed, laidOut)
		}
	}
}
