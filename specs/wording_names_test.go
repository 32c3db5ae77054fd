package specs_test

import (
	"regexp"
	"strings"
	"testing"
)

// otherNames are names for a thing that has another one here, each with the name
// that all rooms use, and the ids that may say it otherwise.
var otherNames = []struct {
	other, name string
	but         []string
}{
	{`sump plug|drain screw|oil plug`, "drain plug", nil},
	{`drain pan|catch pan|in the pan\b|plug, pan\b|drip tray|basin|bowl`, "tray", nil},
	{`oil light|warning light|warning lamp|oil pressure lamp|pressure light`, "oil lamp", nil},
	{`torch|flashlight|inspection lamp|a lamp|^lamp on\b`, "light", nil},
	{`the stick\b|oil stick|(^| )stick (as|from)`, "dipstick", nil},
	{`sight glass|inspection window|the glass\b|viewing`, "level window", nil},
	{`cartridge|insert filter|paper filter`, "filter element", nil},
	{`canister|can filter|screw-on filter`, "spin-on filter", nil},
	{`oil screen|gauze|sieve`, "strainer", nil},
	{`\bcloths?\b`, "rag", []string{"aid.*"}},
	{`helicoil|helical insert|thread coil`, "thread insert", nil},
	{`fill hole|filling hole|fill plug|oil filler hole`, "filler", nil},
	{`torque spanner|torque key`, "torque wrench", nil},
	{`socket wrench|wrench of|open wrench|short wrench`, "spanner", nil},
	{`allen|inbus|hex key|torx`, "hexagon key, six-lobe bit", nil},
	{`\bsignal\b|reception|internet|\bweb\b`, "network", []string{"home.add-yes"}}, // what stands on that button
	{`motorbike|motorcycle's manual|vehicle|machine`, "bike", []string{"invented*", "page.insecure", "settings.offline.insecure"}},
	{`handbook|service book|workshop manual|owner's manual`, "manual", []string{"aid.*.source"}},
	{`mileage|speedometer|tacho`, "odometer", nil},
	{`petrol|gasoline`, "fuel", []string{"finding.service-other-engine"}},
	{`carriageway|hard shoulder`, "road", nil},
	{`liquid gasket|silicone|sealing compound`, "sealant", nil},
	{`scales\b`, "kitchen scale", nil},
	{`mobile|device\b|smartphone`, "phone", nil},
	{`application|program\b`, "app", []string{"*"}},
	{`entries? of the log|logbook`, "record", nil},
	{`back-up|safety copy`, "backup", nil},
}

// isTyped reports whether these are words that people type, whatever the house calls things.
func isTyped(id string) bool { return strings.HasPrefix(id, "asked.names.") }

// A thing has one name in all rooms: who reads two looks for two things.
func TestWording_OneNameForOneThing(t *testing.T) {
	for _, n := range otherNames {
		other := regexp.MustCompile(`(?i)\b(` + n.other + `)`)
		for _, w := range wordings(t) {
			if matchesAny(w.id, n.but) || isTyped(w.id) {
				continue
			}
			if found := other.FindString(placeholder.ReplaceAllString(w.words, "")); found != "" {
				t.Errorf("%s: %q says %q: %q", w.id, w.words, found, n.name)
			}
		}
	}
}

// badPhrases are not said at all, each with what is wrong with it.
var badPhrases = []struct{ phrase, wrong string }{
	{`workshops?\b`, "a mechanic reads this: \"open it, or send it to someone who may\""},
	{`have it done|have (the|it) .* (measured|looked at)`, "say what to do: a mechanic reads this"},
	{`\w+n't\b`, "\"not\" is overread in it: write it out"},
	{`\banew\b|\baskew\b|\bafresh\b|\bheeds?\b|\bhitherto\b|\bthereof\b|\bwhereby\b|\bin need\b|\bhardly\b|\bperhaps\b|\bmostly\b.*\bmostly\b`, "nobody says that in a workshop"},
	{`goes nowhere|money poured|than you think|last chance|nobody will ever|may be you|looks like your doing|not the bottle|is a fountain|hold for a minute|beats? (too little|torn)|no ring:|it will not tell|others pay|does the rest`, "a saying is no reason: say what happens"},
	{`\bsimply\b|\bjust\b (a|do|press)|\bplease\b|\beasy\b|\bobviously\b|of course`, "says nothing"},
	{`\be\.g\.|\bi\.e\.|\betc\b|\bresp\.|\bapprox\b`, "no abbreviations: \"such as\", \"and so on\""},
	{`\(s\)`, "use the forms of plural"},
	{`!$`, "nobody is shouted at; a caution has its signal word"},
	{`\b(two|three|four|five|six|seven|eight|nine|ten) (km|mm|kg|°C|N·m|mL|L)\b`, "a figure with a unit is written in digits"},
	{`  |\.\.\.| ,| ;| \.$|\?\?|,,`, "punctuation"},
}

func TestWording_NoBadPhrase(t *testing.T) {
	for _, b := range badPhrases {
		phrase := regexp.MustCompile(`(?i)(` + b.phrase + `)`)
		for _, w := range wordings(t) {
			if found := phrase.FindString(w.words); found != "" && !isTyped(w.id) {
				t.Errorf("%s: %q says %q: %s", w.id, w.words, found, b.wrong)
			}
		}
	}
}

// ownWords are families of which each member has to have words, whatever those of
// another are.
var ownWords = []string{"finding.*.do", "lookup.*", "step.*.why", "*.more"}

// saidTwice are sentences that stand under several ids, each with its reason.
var saidTwice = map[string]string{
	"Shared.":          "two parts of the catalogue that are loaded apart",
	"Saved as {name}.": "two parts of the catalogue that are loaded apart",
}

// What is said in two places would be mended in one: a sentence stands once, and its
// id is used twice.
func TestWording_NoSentenceTwice(t *testing.T) {
	ids, used := map[string][]string{}, map[string]bool{}
	for _, w := range wordings(t) {
		if isSentence(w.words) && !matchesAny(w.id, ownWords) {
			ids[w.words] = append(ids[w.words], w.id)
		}
	}
	for words, under := range ids {
		if len(under) > 1 {
			if used[words] = true; saidTwice[words] == "" {
				t.Errorf("%q stands under %s", words, strings.Join(under, ", "))
			}
		}
	}
	everyIsUsed(t, saidTwice, used)
}
