package specs_test

import (
	"encoding/json"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tidysump/specs"
)

// text is one form of an entry of the default catalogue.
type text struct{ part, id, words string }

// wordings are the texts that are read, in the order of their ids: of an entry
// with forms each.
func wordings(t *testing.T) []text {
	t.Helper()
	var list []text
	for part, source := range specs.Words()[0].Parts {
		var entries map[string]any
		if err := json.Unmarshal(source, &entries); err != nil {
			t.Fatal(part, err)
		}
		for id, entry := range entries {
			if matchesAny(id, unspoken) {
				continue
			}
			switch e := entry.(type) {
			case string:
				list = append(list, text{part, id, e})
			case map[string]any:
				for _, category := range slices.Sorted(maps.Keys(e)) {
					if category != "by" {
						list = append(list, text{part, id, e[category].(string)})
					}
				}
			}
		}
	}
	slices.SortStableFunc(list, func(a, b text) int { return strings.Compare(a.id, b.id) })
	if len(list) < 1500 {
		t.Fatalf("the catalogue has only %d texts", len(list))
	}
	return list
}

// matchesAny tells whether an id is one of a list; "*" there stands for anything.
func matchesAny(id string, patterns []string) bool {
	return slices.ContainsFunc(patterns, func(p string) bool {
		matches, _ := path.Match(p, id)
		return matches
	})
}

// unspoken are ids whose words are not read as sentences: what the search of
// problems finds them by.
var unspoken = []string{"fault.*.also"}

// endOfSentence is a mark with a blank and the beginning of another sentence.
var endOfSentence = regexp.MustCompile(`([.?!])\s+(["“]?[\p{Lu}\d{])`)

// filledSentence is a value that is a whole sentence.
var filledSentence = regexp.MustCompile(`\{(held|watch|air|coat|often)\} `)

// sentencesOf cuts a text at its full stops, question and exclamation marks.
func sentencesOf(words string) []string {
	words = filledSentence.ReplaceAllString(words, "")
	return strings.Split(endOfSentence.ReplaceAllString(words, "$1\n$2"), "\n")
}

// isSentence tells a sentence, or a text with one in it, from a label.
func isSentence(words string) bool {
	return strings.HasSuffix(words, ".") || strings.HasSuffix(words, "?") || strings.HasSuffix(words, "!") || len(sentencesOf(words)) > 1
}

// filledIn is how many words a value has, where it has more than two: what the
// sample cards and the tables of the program put there most of the time.
var filledIn = map[string]int{
	"place": 5, "device": 4, "stance": 6, "state": 3, "where": 5, "seal": 3, "plug": 3, "bike": 3,
	"why": 6, "found": 6, "source": 4, "method": 6, "problem": 4, "step": 5,
}

var (
	placeholder = regexp.MustCompile(`\{([a-z]+)\}`)
	// listed is what ends a sentence as a list: it is read piece by piece.
	listed = regexp.MustCompile(`: \{(places|order|leave|marks|text|what|why|name|step|problem|value|of|bike)\}\.?$`)
	aWord  = regexp.MustCompile(`[\pL\d]`)
)

// length of a sentence in words, as it is read.
func length(sentence string) int {
	n := 0
	sentence = listed.ReplaceAllString(sentence, "")
	for _, m := range placeholder.FindAllStringSubmatch(sentence, -1) {
		n += max(filledIn[m[1]], 2)
	}
	for word := range strings.FieldsSeq(placeholder.ReplaceAllString(sentence, "")) {
		if aWord.MatchString(word) {
			n++
		}
	}
	return n
}

const mostWords = 20

// longer may be longer than that, each with its reason.
var longer = map[string]string{}

// A sentence that is read with oil on the hands has twenty words at most.
func TestWording_SentencesAreShort(t *testing.T) {
	used := map[string]bool{}
	for _, w := range wordings(t) {
		for _, s := range sentencesOf(w.words) {
			if n := length(s); n > mostWords {
				if used[w.id] = true; longer[w.id] == "" {
					t.Errorf("%s: %q has %d words, %d at most", w.id, s, n, mostWords)
				}
			}
		}
	}
	everyIsUsed(t, longer, used)
}

func everyIsUsed(t *testing.T, exceptions map[string]string, used map[string]bool) {
	t.Helper()
	for id := range exceptions {
		if !used[id] {
			t.Errorf("%q needs no exception any more", id)
		}
	}
}

// whole are the ids of what is read as sentences; all others may be labels.
var whole = []string{"step.*.do", "step.*.why", "caution.*", "do.*", "next.*", "finding.*", "aid.*.*", "until.*", "fault-why.*", "lookup.*", "calc.*.why", "change.*", "*.how", "*.failed"}

// What is a sentence begins and ends as one.
func TestWording_SentencesAreWhole(t *testing.T) {
	begins := regexp.MustCompile(`^["“]?[\p{Lu}\d{…]`)
	ends := regexp.MustCompile(`[.?!…]["”]?$|(^|: )\{[a-z]+\}$`)
	for _, w := range wordings(t) {
		if matchesAny(w.id, noInstructions) || !matchesAny(w.id, whole) && !isSentence(w.words) {
			continue
		}
		for _, s := range sentencesOf(w.words) {
			if !begins.MatchString(s) || !ends.MatchString(s) {
				t.Errorf("%s: %q does not begin or end as a sentence", w.id, s)
			}
		}
	}
}

// results are what a check, a step or a problem says: whole sentences.
var results = []string{"finding.*", "caution.*", "next.*", "do.*", "until.*", "fault-why.*", "fault-to.*", "step.*.do", "step.*.why", "lookup.*"}

// A result ends as a sentence, whatever it ends with: a name in it is no end.
func TestWording_ResultsEndWithAStop(t *testing.T) {
	ends, checked := regexp.MustCompile(`[.?!…]["”)]?$`), 0
	for _, w := range wordings(t) {
		if !matchesAny(w.id, results) {
			continue
		}
		if checked++; !ends.MatchString(w.words) {
			t.Errorf("%s: %q ends without a stop", w.id, w.words)
		}
	}
	if checked < 500 {
		t.Errorf("only %d results", checked)
	}
}

// counted is a number with what is counted behind it.
var counted = regexp.MustCompile(`\{count\} (?:[a-z]+ ){0,2}?([a-z]+s)\b`)

// What is counted agrees with its number: a thing that may be one or several has a form
// for each, and the form for one says no more than one.
func TestWording_CountsAgree(t *testing.T) {
	agree := 0
	for _, source := range specs.Words()[0].Parts {
		var entries map[string]any
		if err := json.Unmarshal(source, &entries); err != nil {
			t.Fatal(err)
		}
		for id, entry := range entries {
			switch e := entry.(type) {
			case string:
				if m := counted.FindStringSubmatch(e); m != nil && !slices.Contains(notPlural, m[1]) && !matchesAny(id, several) {
					t.Errorf("%s: %q has no form for one", id, e)
				}
			case map[string]any:
				one, _ := e["one"].(string)
				if m := counted.FindStringSubmatch(one); m != nil && e["by"] == nil && !slices.Contains(notPlural, m[1]) {
					t.Errorf("%s: one is %q", id, one)
				}
				agree++
			}
		}
	}
	if agree < 30 {
		t.Errorf("only %d entries have forms", agree)
	}
}

// notPlural end in -s and are no plural.
var notPlural = []string{"is", "was", "has", "this", "its", "less", "fits", "differs", "reads"}

// several are said of two or more only: a step that counts pieces is another one where
// there is one piece, and a pace follows from two readings.
var several = []string{"step.*", "step.*.do", "due.pace.from"}

// instructions are what somebody is to do.
var (
	instructions = []string{"step.*.do", "do.*", "next.*", "finding.*.do", "aid.*.*", "lookup.*"}
	// noInstructions are names and sources among them.
	noInstructions = []string{"aid.*.title", "aid.*.source"}
)

// verbs begin an instruction. Each was looked at by hand: add one only if it is a
// verb that tells somebody what to do.
var verbs = strings.Fields(`
	Add Answer Ask Bag Break Bring Brush Call Catch Centre-punch Change Check Choose
	Clean Close Collect Compare Cool Correct Count Cover Cut Degrease Dip Do Drain Draw
	Drill Drive Dry Dust Ease Empty Enter Expect Fill Find Fish Fit Flush Follow Get
	Give Go Grease Halt Hand Have Hold Judge Keep Lay Lean Leave Let Lift Listen Load
	Look Loosen Lower Make Mark Match Measure Mend Move Note Oil Open Part Photograph
	Plan Pour Press Pull Push Put Read Rely Remove Replace Report Reset Restore Ride
	Rinse Rock Roll Rub Run Say Scrape Screw Scrub Seat See Send Set Shake Shine Shorten
	Show Shut Smear Spread Squeeze Stand Start Stay Stop Strike Swap Sweep Switch Take
	Tap Tell Test Tie Tighten Top Touch Treat Try Turn Undo Unscrew Update Use Wait Walk
	Warm Warn Wash Watch Wear Wind Wipe Write`)

var (
	// fact is what an instruction may say first, as a label: "Where: {place}."
	fact = regexp.MustCompile(`^\p{Lu}\pL*( \pL+)?: [^.]*\{[a-z]+\}[^.]*\.$`)
	// condition is what may stand before the verb.
	condition = regexp.MustCompile(`^(If|When|Before|After|Unless|Until|Once|Without|With|Where|While|At|In|On|From|For|To|As) [^,.]*(, )(\pL+)`)
)

// beginsWithVerb tells whether a sentence begins with one of the verbs, or with a
// condition and then one.
func beginsWithVerb(sentence string) (word string, does bool) {
	sentence = strings.TrimPrefix(sentence, "Then ")
	if m := condition.FindStringSubmatch(sentence); m != nil {
		word = m[3]
	} else {
		word = strings.TrimRight(strings.Fields(sentence)[0], ",.:;?")
	}
	return word, slices.ContainsFunc(verbs, func(v string) bool { return strings.EqualFold(v, word) })
}

// noVerbFirst may begin otherwise, each with its reason.
var noVerbFirst = map[string]string{}

// An instruction begins with what is to be done.
func TestWording_InstructionsBeginWithAVerb(t *testing.T) {
	used := map[string]bool{}
	for _, w := range wordings(t) {
		if !matchesAny(w.id, instructions) || matchesAny(w.id, noInstructions) {
			continue
		}
		for _, s := range sentencesOf(w.words) {
			if fact.MatchString(s) {
				continue
			}
			if word, does := beginsWithVerb(s); !does {
				if used[w.id] = true; noVerbFirst[w.id] == "" {
					t.Errorf("%s: %q begins with %q, which is no verb that is known here (verbs)", w.id, s, word)
				}
			}
			break // the first sentence that is no label
		}
	}
	everyIsUsed(t, noVerbFirst, used)
}

var (
	negative = regexp.MustCompile(`(?i)\b(not|cannot|never|no|none|nothing|nobody|nowhere|neither|without)\b`)
	// quoted is what somebody types or reads, what is filled in, and the one name of a
	// gap.
	quoted = regexp.MustCompile(`"[^"]*"|\{[a-z]+\}|not known`)
)

// twoNegatives may say it twice, each with its reason.
var twoNegatives = map[string]string{}

// Two negatives in a sentence are read as their opposite.
func TestWording_OneNegativeASentence(t *testing.T) {
	used := map[string]bool{}
	for _, w := range wordings(t) {
		for _, s := range sentencesOf(w.words) {
			if all := negative.FindAllString(quoted.ReplaceAllString(s, ""), -1); len(all) > 1 {
				if used[w.id] = true; twoNegatives[w.id] == "" {
					t.Errorf("%s: %q says no twice: %q", w.id, s, all)
				}
			}
		}
	}
	everyIsUsed(t, twoNegatives, used)
}
