package find_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/find"
	"tidysump/internal/quantity"
	"tidysump/specs"
)

// names are what people call the things, in the words of the catalogue.
var names = func() map[string]string {
	list, sentences := map[string]string{}, specs.Sentences()
	for _, t := range find.Named {
		list[string(t)] = sentences["asked.names."+string(t)]
	}
	return list
}()

// bike is a line of a list.
type bike struct{ Text, Volume string }

// searchOf is one of bikes in the words of the catalogue.
func searchOf(typed string, list []bike) find.Search {
	s := find.Search{Typed: typed, Names: names, System: quantity.Metric}
	for _, b := range list {
		s.Lines, s.Volumes = append(s.Lines, b.Text), append(s.Volumes, b.Volume)
	}
	return s
}

// The bikes of the table: invented ones.
var bikes = []bike{
	{Text: "plainford heron 480 2012 2013 2014 wet sump, one oil 10w-40 10w40", Volume: "2.5 L"},
	{Text: "bess ab-12 cd ab12cd red tank ada pell plainford otter 900 2020 flat twin, dry clutch and shaft 15w-50 15w50", Volume: "3.8–4 L"},
	{Text: "plainford kestrel 125 1999 small engine with a strainer 10w-30 10w30", Volume: "0.9 L"},
	{Text: "marl vole 50 scooter with final-drive oil 10w-40 10w40", Volume: "not known"},
	{Text: "kolben ülo 250 dry sump, oil in the frame 20w-50 20w50", Volume: "2 L"},
}

func search(typed string) find.Found {
	s := searchOf(typed, bikes)
	return s.Find()
}

// said is what was found, as "0 2 ~ about 0: drain torque".
func said(f *find.Found) string {
	var words []string
	for _, h := range f.Fits {
		words = append(words, strconv.Itoa(h))
	}
	if f.Near {
		words = append(words, "~")
	}
	if len(f.Things) > 0 {
		words = append(words, "about")
		for _, h := range f.About {
			words = append(words, strconv.Itoa(h))
		}
		words = append(words, ":")
		for _, t := range f.Things {
			words = append(words, string(t))
		}
	}
	return strings.Join(words, " ")
}

func TestFind(t *testing.T) {
	for _, c := range []struct{ typed, want string }{
		{"", ""},
		{"   ", ""},
		{"?!", ""},
		{"heron", "0"},
		{"PLAINFORD", "0 1 2"},
		{"plain 2013", "0"},
		{"480", "0"},
		{"no such bike", ""},
		// By layout, grade, volume, plate, owner, words.
		{"flat twin", "1"},
		{"dry clutch", "1"},
		{"10W-40", "0 3"},
		{"10w40", "0 3"},
		{"10W/40", "0 3"},
		{"10w 40", "0 3"},
		{"2.5 L", "0"},
		{"2,5 l", "0"},
		{"2.5L", "0"},
		{"2500 ml", "0"},
		{"2.64 US qt", "0"},
		{"3.9 L", "1"},
		{"4 litres", "1"},
		{"2.7 L", ""},
		{"2.5", ""},
		{"plainford oil", "0 1 2 about 0 1 2 : oil"},
		{"2 L", "4"},
		{"plainford 2.5 L", "0"},
		{"2.5 L 10W-40", "0"},
		{"0.9 l.", "2"},
		{"ab12cd", "1"},
		{"AB 12 CD", "1"},
		{"AB-12-CD", "1"},
		{"ada", "1"},
		{"red tank", "1"},
		{"ülo", "4"},
		{"٤٨٠", "0"},
		// A slip of one letter, and never of a figure.
		{"herron", "0 ~"},
		{"heon", "0 ~"},
		{"hreon", "0 ~"},
		{"hwron", "0 ~"},
		{"plainfrod heron", "0 ~"},
		{"kestr", "2"},
		{"kesr", "2 ~"},
		{"vple", "3 ~"},
		{"bes", "1"},
		{"bss", "1 ~"},
		{"hxrxn", ""},
		{"481", ""},
		{"heron 481", ""},
		{"herons 480", "0 ~"},
		// What is typed is found before anything like it.
		{"oil", "0 3 4"},
		{"strainer", "2"},
		// Questions.
		{"heron drain", "0 about 0 : drain"},
		{"drain heron", "0 about 0 : drain"},
		{"What is the drain plug torque of the Heron?", "0 about 0 : drain torque"},
		{"heron oil", "0 about 0 : oil"},
		{"heron how much oil", "0 about 0 : volume"},
		{"which oil for my heron", "0 about 0 : grade"},
		{"bess washer", "1 about 1 : washer"},
		{"ab12cd drain", "1 about 1 : drain"},
		{"heron dran", "0 about 0 : drain"},
		{"heron dr", "0 about 0 : drain"},
		{"heron fil", "0 about 0 : filter filler"},
		{"heron filtre", "0 about 0 : filter"},
		{"herron drain", "0 ~ about 0 : drain"},
		{"herron dran", "0 ~ about 0 : drain"},
		{"heron level screw", "0 about 0 : level-screw"},
		{"heron level", "0 about 0 : level"},
		{"plainford drain", "0 1 2 about 0 1 2 : drain"},
		{"drain", "0 1 2 3 4 about : drain"},
		{"what is the drain torque", "0 1 2 3 4 about : drain torque"},
		{"the", "4"},
		{"the heron", "0"},
		{"shaft", "1"},
		{"bess shaft", "1 about 1 : final-drive"},
		{"10w-40 drain", "0 3 about 0 3 : drain"},
		{"2.5 L drain", "0 about 0 : drain"},
		{"heron 481 drain", ""},
	} {
		f := search(c.typed)
		if got := said(&f); got != c.want {
			t.Errorf("%q: found %q, want %q", c.typed, got, c.want)
		}
	}
}

// Of a list of one bike a question needs no name.
func TestFind_OneBike(t *testing.T) {
	s := searchOf("drain", bikes[:1])
	f := s.Find()
	if got := said(&f); got != "0 about 0 : drain" {
		t.Errorf("found %q", got)
	}
}

// One slip of a letter in any word of a bike still finds it, wherever the slip is; only in
// a word that reads like another that stands there may more be found.
func TestFind_AnySlip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.IntRange(0, len(bikes)-1).Draw(t, "bike")
		var long []string
		for _, w := range strings.Fields(strings.ReplaceAll(bikes[at].Text, ",", "")) {
			if len([]rune(w)) >= 4 && !strings.ContainsAny(w, "0123456789-") {
				long = append(long, w)
			}
		}
		meant := []rune(rapid.SampledFrom(long).Draw(t, "word"))
		n := rapid.IntRange(0, len(meant)-1).Draw(t, "place")
		typed := slices.Clone(meant)
		switch rapid.SampledFrom([]string{"missing", "more", "other", "changed"}).Draw(t, "slip") {
		case "missing":
			typed = slices.Delete(typed, n, n+1)
		case "more":
			typed = slices.Insert(typed, n, 'x')
		case "other":
			typed[n] = 'x'
		case "changed":
			n = max(n, 1)
			typed[n-1], typed[n] = typed[n], typed[n-1]
		}
		f := search(string(typed))
		exact := slices.ContainsFunc(bikes, func(l bike) bool { return strings.Contains(l.Text, string(typed)) })
		if !slices.Contains(f.Fits, at) && !exact && len(f.Things) == 0 {
			t.Fatalf("%q for %q: found %q", string(typed), string(meant), said(&f))
		}
	})
}

// What stands in a line is found as it stands, and a search of it finds each line in which
// all its words stand, and no other.
func TestFind_AsTyped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		of := rapid.SampledFrom(bikes).Draw(t, "bike")
		fields := strings.Fields(of.Text)
		typed := rapid.SliceOfN(rapid.SampledFrom(fields), 1, 3).Draw(t, "words")
		var want []int
		for i, l := range bikes {
			if !slices.ContainsFunc(typed, func(w string) bool { return !strings.Contains(l.Text, strings.Trim(w, ",")) }) {
				want = append(want, i)
			}
		}
		f := search(strings.Join(typed, " "))
		if len(f.Things) > 0 { // a question: all that are named
			f.Fits = slices.DeleteFunc(f.Fits, func(at int) bool { return !slices.Contains(want, at) })
		}
		if !slices.Equal(f.Fits, want) || f.Near {
			t.Fatalf("%q: found %q, want %v", typed, said(&f), want)
		}
	})
}

// Whatever is typed, each place is one of the list, once and in its order, and what is told
// of is among what fits.
func TestFind_AnyText(t *testing.T) {
	words := append(strings.Fields("heron drain oil 2.5 l 10w-40 481 – ½ 2..5 qt , ? ab-12 drian a the \x00 ٣ filter-can"), "")
	rapid.Check(t, func(t *rapid.T) {
		typed := rapid.OneOf(rapid.String(), rapid.Map(rapid.SliceOf(rapid.SampledFrom(words)), func(w []string) string { return strings.Join(w, " ") })).Draw(t, "typed")
		f := search(typed)
		for _, list := range [][]int{f.Fits, f.About} {
			for n, h := range list {
				if h < 0 || h >= len(bikes) || n > 0 && list[n-1] >= h {
					t.Fatalf("%q: %v", typed, list)
				}
			}
		}
		for _, h := range f.About {
			if !slices.Contains(f.Fits, h) {
				t.Fatalf("%q: tells of %d, which doesn't fit: %v", typed, h, f.Fits)
			}
		}
		if len(f.About) > 0 && len(f.Things) == 0 {
			t.Fatalf("%q: tells of nothing", typed)
		}
	})
}

// Each name of a thing asks for it, beside any bike.
func TestFind_EveryName(t *testing.T) {
	for _, thing := range find.Things {
		for name := range strings.SplitSeq(names[string(thing)], ",") {
			f := search("heron " + name)
			if !slices.Contains(f.Things, thing) || len(f.Things) != 1 || len(f.About) != 1 {
				t.Errorf("%q: %q", "heron "+name, said(&f))
			}
		}
	}
}
