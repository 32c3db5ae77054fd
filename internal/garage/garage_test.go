package garage_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/due"
	"tidysump/internal/garage"
	"tidysump/internal/ledger"
	"tidysump/internal/wire"
)

// at gives a time in the minutes after noon.
func at(minute int) string {
	return "2026-11-30T12:" + string(rune('0'+minute/10)) + string(rune('0'+minute%10)) + ":00.000Z"
}

// told is a fact of a bike: "b1 told called:the green one", its number and time the place in the
// list, its id "f" and that.
func told(t *testing.T, lines ...string) []ledger.Fact {
	t.Helper()
	var list []ledger.Fact
	for n, line := range lines {
		words := strings.SplitN(line, " ", 3)
		f := ledger.Fact{Book: ledger.BikeBook, Of: words[0], ID: "f" + strconv.Itoa(n), Kind: ledger.FactKind(words[1]), Time: at(n), Seq: n + 1}
		if len(words) > 2 {
			f.What, f.Value, _ = strings.Cut(words[2], ":")
		}
		if f.Kind == garage.Own {
			f.Signs = map[string]string{"standing": "measured"}
		}
		list = append(list, f)
	}
	return list
}

func bikes(facts []ledger.Fact) string {
	list, _ := garage.Replay(&ledger.Input{Facts: facts})
	var text []string
	for i := range list {
		text = append(text, string(wire.Write(&list[i])))
	}
	return strings.Join(text, "\n")
}

func TestReplay(t *testing.T) {
	for _, c := range []struct {
		name  string
		facts []string
		want  string
	}{
		{"nothing", nil, ``},
		{"of a card's own bike", []string{"k1 told called:Bess"}, `{"id":"k1","card":"k1","called":"Bess"}`},
		{"follows", []string{"b1 follows :k1", "b1 follows :k2"}, `{"id":"b1","card":"k2"}`},
		{"follows undone", []string{"b1 follows :k1", "b1 follows :k2", "b1 undo f1"}, `{"id":"b1","card":"k1"}`},
		{"told and taken away", []string{"b1 told plate:KX 1", "b1 told owner:Ada", "b1 told plate: "}, `{"id":"b1","card":"b1","owner":"Ada"}`},
		{"blanks", []string{"b1 told words:  red tank "}, `{"id":"b1","card":"b1","words":"red tank"}`},
		{"aside", []string{"b1 aside sold"}, `{"id":"b1","card":"b1","aside":"sold"}`},
		{"back", []string{"b1 aside sold", "b1 back"}, `{"id":"b1","card":"b1"}`},
		{"back undone", []string{"b1 aside gone", "b1 back", "b1 undo f1"}, `{"id":"b1","card":"b1","aside":"gone"}`},
		{"all undone", []string{"b1 follows :k1", "b1 undo f0"}, ``},
		{"figure", []string{"b1 figure volume.engine:2 L", "b1 figure torque.plug:20 N·m", "b1 figure volume.engine:2.1 L"},
			`{"id":"b1","card":"b1","figures":[{"what":"volume.engine","value":"2.1 L","standing":"measured","system":"metric"},{"what":"torque.plug","value":"20 N·m","standing":"measured","system":"metric"}]}`},
		{"figure taken away", []string{"b1 figure volume.engine:2 L", "b1 figure volume.engine:"}, `{"id":"b1","card":"b1"}`},
		{"odometer", []string{"b1 odometer :12 400", "b1 odometer :7700 mi"}, `{"id":"b1","card":"b1","odometer":[{"id":"f1","day":"2026-11-30","at":"2026-11-30T12:01:00.000Z","km":12391.9488}]}`},
		{"odometer undone", []string{"b1 odometer :12 400 km", "b1 odometer :1240 km", "b1 undo f1"}, `{"id":"b1","card":"b1","odometer":[{"id":"f0","day":"2026-11-30","at":"2026-11-30T12:00:00.000Z","km":12400}]}`},
		{"odometer that is none", []string{"b1 odometer :far"}, `{"id":"b1","card":"b1"}`},
		{"photo", []string{"b1 photo side"}, `{"id":"b1","card":"b1","photos":[{"id":"f0","what":"side"}]}`},
		{"job", []string{"b1 job j1", "b2 job j2"}, `{"id":"b1","card":"b1","jobs":["j1"]}` + "\n" + `{"id":"b2","card":"b2","jobs":["j2"]}`},
		{"job asked for twice", []string{"b1 job j1", "b2 job j1"}, `{"id":"b1","card":"b1"}` + "\n" + `{"id":"b2","card":"b2","jobs":["j1"]}`},
		{"job given back", []string{"b1 job j1", "b2 job j1", "b2 undo f1"}, `{"id":"b1","card":"b1","jobs":["j1"]}`},
		{"job again", []string{"b1 job j1", "b2 job j1", "b1 job j1"}, `{"id":"b1","card":"b1","jobs":["j1"]}` + "\n" + `{"id":"b2","card":"b2"}`},
		{"joined", []string{"b1 joined :b2"}, `{"id":"b1","card":"b1","into":"b2"}`},
		{"joined through", []string{"b1 joined :b2", "b2 joined :b3"}, `{"id":"b1","card":"b1","into":"b3"}` + "\n" + `{"id":"b2","card":"b2","into":"b3"}`},
		{"joined with two", []string{"b1 joined :b2", "b1 joined :b3"}, `{"id":"b1","card":"b1","into":"b3"}`},
		{"circle", []string{"b1 joined :b2", "b2 joined :b3", "b3 joined :b1"},
			`{"id":"b1","card":"b1","into":"b3"}` + "\n" + `{"id":"b2","card":"b2","into":"b3"}` + "\n" + `{"id":"b3","card":"b3"}`},
		{"itself", []string{"b1 joined :b1"}, `{"id":"b1","card":"b1"}`},
		{"join undone", []string{"b1 joined :b2", "b1 undo f0"}, ``},
		{"of another version", []string{"b1 polished :x"}, `{"id":"b1","card":"b1"}`},
	} {
		if got := bikes(told(t, c.facts...)); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.name, got, c.want)
		}
	}
}

// Undoing a join restores both bikes, whatever else was told and joined.
func TestReplay_JoinUndone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := drawn(t)
		join := ledger.Fact{Book: ledger.BikeBook, Of: "b1", ID: "join", Kind: garage.Joined, Time: at(30), Seq: 40, Value: rapid.SampledFrom([]string{"b2", "b3", "b9"}).Draw(t, "into")}
		undo := ledger.Fact{Book: ledger.BikeBook, Of: "b1", ID: "undo", Kind: ledger.Undo, Time: at(31), Seq: 41, What: "join"}
		if got, want := bikes(append(slices.Clone(list), join, undo)), bikes(list); got != want {
			t.Fatalf("undone:\n%s\nbefore:\n%s", got, want)
		}
	})
}

// drawn are facts of a few bikes.
func drawn(t *rapid.T) []ledger.Fact {
	bike := rapid.SampledFrom([]string{"b1", "b2", "b3", "b4", ""})
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) ledger.Fact {
		f := ledger.Fact{
			Book: ledger.BikeBook, Of: bike.Draw(t, "of"), ID: "f" + strconv.Itoa(rapid.IntRange(0, 12).Draw(t, "id")),
			Kind: rapid.SampledFrom([]ledger.FactKind{garage.Follows, garage.Told, garage.Own, garage.Aside, garage.Back, garage.Joined, garage.Joined, garage.Job, garage.Picture, garage.Read, ledger.Undo, "other"}).Draw(t, "kind"),
			Time: at(rapid.IntRange(0, 5).Draw(t, "time")), Seq: rapid.IntRange(0, 5).Draw(t, "seq"),
			What: rapid.SampledFrom([]string{"called", "owner", "volume.engine", "thread.plug", "sold", "f1", "f2", "f3", "j1", ""}).Draw(t, "what"),
		}
		f.Value = rapid.SampledFrom([]string{"x", "y", "2 L", "12400 km", "b1", "b2", "b3", " "}).Draw(t, "value")
		return f
	}), 0, 16).Draw(t, "facts")
}

// Two phones' facts make the same bikes in any order, and however often each comes.
func TestReplay_Union(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := drawn(t)
		want := bikes(slices.Clone(list))
		if got := bikes(rapid.Permutation(list).Draw(t, "order")); got != want {
			t.Fatalf("in another order:\n%s\nwant:\n%s", got, want)
		}
		cut := rapid.IntRange(0, len(list)).Draw(t, "cut")
		if got := bikes(slices.Concat(list[cut:], list, list[:cut])); got != want {
			t.Fatalf("of a union:\n%s\nwant:\n%s", got, want)
		}
	})
}

// What a bike went into is a bike by itself, and no way leads round.
func TestReplay_Roots(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list, _ := garage.Replay(&ledger.Input{Facts: drawn(t)})
		into := map[string]string{}
		for i := range list {
			into[list[i].ID] = list[i].Into
		}
		for id, root := range into {
			if root == id || into[root] != "" {
				t.Fatalf("%s went into %s, which went into %s", id, root, into[root])
			}
		}
	})
}

// Nothing in a set refuses; what is being added is refused for one clear reason.
func TestReplay_Adding(t *testing.T) {
	long := strings.Repeat("x", ledger.ValueLetters+1)
	for _, c := range []struct {
		facts []string
		want  string
	}{
		{[]string{"b1 told called:Bess"}, ""},
		{[]string{"b1 told called:"}, "told-nothing /facts/0/value"},
		{[]string{"b1 told called:Bess", "b1 told called:"}, ""},
		{[]string{"b1 told called:" + long}, "text-too-long /facts/0/value"},
		{[]string{"b1 told hat:x"}, "unknown-word /facts/0/what"},
		{[]string{"b1 follows :"}, "told-nothing /facts/0/value"},
		{[]string{"b1 polished :x"}, "unknown-event /facts/0/kind"},
		{[]string{"b1 aside eaten"}, "unknown-word /facts/0/what"},
		{[]string{"b1 job"}, "missing /facts/0/what"},
		{[]string{" told called:x"}, "missing /facts/0/of"},
		{[]string{"b1 joined :"}, "unknown-bike /facts/0/value"},
		{[]string{"b1 joined :b1"}, "join-itself /facts/0/value"},
		{[]string{"b1 joined :b2", "b2 joined :b3"}, ""},
		{[]string{"b1 joined :b2", "b1 joined :b2"}, "join-already /facts/1/value"},
		{[]string{"b1 joined :b2", "b2 joined :b3", "b3 joined :b1"}, "join-already /facts/2/value"},
		{[]string{"b1 joined :b2", "b1 undo f0", "b2 joined :b1"}, ""},
		{[]string{"b1 odometer :12 400"}, ""},
		{[]string{"b1 odometer :12 400", "b1 odometer :1240"}, ""},
		{[]string{"b1 odometer :"}, "told-nothing /facts/0/value"},
		{[]string{"b1 odometer :far"}, "not-a-number /facts/0/value"},
		{[]string{"b1 odometer :3 L"}, "unit-of-other-kind /facts/0/value"},
		{[]string{"b1 odometer :0"}, "not-believable /facts/0/value"},
		{[]string{"b1 odometer :3000000 km"}, "not-believable /facts/0/value"},
		{[]string{"b1 figure volume.engine:2 L"}, ""},
		{[]string{"b1 figure volume.engine:200 L"}, "not-believable /facts/0/value"},
		{[]string{"b1 figure volume.engine:much"}, "not-a-number /facts/0/value"},
		{[]string{"b1 figure volume.engine:"}, "told-nothing /facts/0/value"},
		{[]string{"b1 figure volume.engine:2 L", "b1 figure volume.engine:"}, ""},
		{[]string{"b1 figure torque.plug:20"}, "no-unit /facts/0/value"},
		{[]string{"b1 figure thread.plug:round"}, "unknown-thread /facts/0/value"},
		{[]string{"b1 figure grade.engine:thick"}, "unknown-grade /facts/0/value"},
		{[]string{"b1 figure beauty.engine:2"}, "unknown-word /facts/0/what"},
		{[]string{"b1 figure volume:2 L"}, "unknown-word /facts/0/what"},
	} {
		facts := told(t, c.facts...)
		_, found := garage.Replay(&ledger.Input{Facts: facts, Adding: true})
		got := ""
		for _, f := range found {
			if f.Grade == "refuse" {
				got += f.Code + " " + f.Where
			}
		}
		if got != c.want {
			t.Errorf("%.120q: refused %q, want %q", c.facts, got, c.want)
		}
		_, found = garage.Replay(&ledger.Input{Facts: facts})
		for _, f := range found {
			if f.Grade == "refuse" {
				t.Errorf("%.120q: %s refuses what stands", c.facts, f.Code)
			}
		}
	}
}

// A join that is being added is judged after those that stand, be the clock slow.
func TestReplay_AddingWithASlowClock(t *testing.T) {
	facts := told(t, "b1 joined :b2", "b2 joined :b1")
	facts[1].Time = "2020-01-01T00:00:00.000Z"
	_, found := garage.Replay(&ledger.Input{Facts: facts, Adding: true})
	if len(found) != 1 || found[0].Where != "/facts/1/value" || found[0].Grade != "refuse" {
		t.Errorf("%v", found)
	}
}

// Bikes of thousands of facts, figures and jobs are told in one go.
func TestReplay_Many(t *testing.T) {
	const n = 60_000
	list := make([]ledger.Fact, n)
	for i := range list {
		id := strconv.Itoa(i)
		f := ledger.Fact{Book: ledger.BikeBook, Of: "b", ID: id, Kind: garage.Own, Time: at(i % 60), Seq: i, What: "volume.c" + id, Value: "2 L"}
		switch i % 3 {
		case 1:
			f.Kind, f.What = garage.Job, "j"+id
		case 2:
			f.Kind, f.Of, f.Value = garage.Joined, "b"+id, "b"+strconv.Itoa(i+3)
		}
		list[i] = f
	}
	all, found := garage.Replay(&ledger.Input{Facts: list})
	if len(all) != n/3+1 || len(all[0].Figures) != n/3 || len(all[0].Jobs) != n/3 || all[1].Into != "b"+strconv.Itoa(n+2) || len(found) != 0 {
		t.Errorf("%d bikes, %d figures, %d jobs, into %s, %d findings", len(all), len(all[0].Figures), len(all[0].Jobs), all[1].Into, len(found))
	}
}

// Every figure that a bike may have can be told, and comes back as it was typed.
func TestReplay_EveryFigure(t *testing.T) {
	values := map[card.OwnFigure]string{card.OwnVolume: "2,1 L", card.OwnVolumeFilter: "2 US qt", card.OwnGrade: "10W-40", card.OwnThread: "M14 x 1,5",
		card.OwnTorque: "18 ft-lb", card.OwnSize: "17 mm", card.OwnInner: "14", card.OwnOuter: "20", card.OwnThickness: "1.5 mm", card.OwnNumber: "shelf 4"}
	for _, word := range card.OwnFigures {
		facts := told(t, "b1 figure "+string(word)+".x:"+values[word])
		list, found := garage.Replay(&ledger.Input{Facts: facts, Adding: true})
		if len(list) != 1 || len(list[0].Figures) != 1 || list[0].Figures[0].Value != values[word] || len(found) != 0 {
			t.Errorf("%s %q: %v, %v", word, values[word], list, found)
		}
	}
}

// The days of many readings: of a day the last, and of all the newest.
func TestReplay_Odometer(t *testing.T) {
	var list []ledger.Fact
	for n := range 100 {
		day := strconv.Itoa(101 + n/2)[1:]
		list = append(list, ledger.Fact{Book: ledger.BikeBook, Of: "b1", ID: "f" + strconv.Itoa(n), Kind: garage.Read, Time: at(n % 60), Day: "2026-" + strconv.Itoa(101 + n/60)[1:] + "-" + day[:2],
			Seq: n + 1, Value: strconv.Itoa(12000+n) + " mi", Signs: map[string]string{"system": "us"}})
	}
	bikes, found := garage.Replay(&ledger.Input{Facts: list})
	if len(found) > 0 || len(bikes) != 1 {
		t.Fatalf("%v, %v", bikes, found)
	}
	read := bikes[0].Odometer
	if len(read) > due.MostRecent || read[len(read)-1].ID != "f99" {
		t.Fatalf("%d readings, the last %+v", len(read), read[len(read)-1])
	}
	for i := 1; i < len(read); i++ {
		if read[i].Day == read[i-1].Day || read[i].Km <= read[i-1].Km {
			t.Errorf("%+v behind %+v", read[i], read[i-1])
		}
	}
}
