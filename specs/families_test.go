package specs_test

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/debris"
	"tidysump/internal/drain"
	"tidysump/internal/due"
	"tidysump/internal/fill"
	"tidysump/internal/find"
	"tidysump/internal/garage"
	"tidysump/internal/job"
	"tidysump/internal/oil"
	"tidysump/internal/plan"
	"tidysump/internal/quantity"
	"tidysump/specs"
)

// family is a set of word ids that the program puts together from a stem and
// what stands here as its members.
type family struct {
	stem    string
	members []string
	endings []string // "" if the member ends the id
}

var plain = []string{""}

// families lists all of them. Their members are what Go, the schema or the page
// can put after the stem, never what the catalogue happens to hold.
func families(t *testing.T) []family {
	t.Helper()
	var list []family
	for _, group := range [][]family{planWords(t), schemaWords(t), pageWords(t), benchWords(t), editWords(t), faultWords(t), billWords(t), visitWords(t), onceAsked(), bookWords(t), changeWords(t), manualWords(t)} {
		list = append(list, group...)
	}
	return list
}

// onceAsked are the answers that earlier versions had, which stand in records.
func onceAsked() []family {
	var list []family
	for n := range debris.Asks {
		if a := &debris.Asks[n]; len(a.Once) > 0 {
			list = append(list, family{a.Family, a.Once, plain})
		}
	}
	return list
}

// planWords are those of steps, figures and findings.
func planWords(t *testing.T) []family {
	program := goSources(t, "internal", "wasm")
	jobs := goSources(t, "internal/shown", "internal/plan", "internal/job", "internal/outlook", "internal/find")
	codes := fields(program, "Code")
	for name, nth := range map[string]int{"add": 0, "fault": 1, "Fault": 1, "unasked": 1, "refuse": 1, "Refusal": 0, "refusal": 0} {
		codes = append(codes, arguments(program, name, nth)...)
	}
	codes = append(codes, arguments(goSources(t, "internal/manual"), "doubt", 0)...)
	codes = append(codes, arguments(goSources(t, "internal/core"), "failed", 0)...)
	codes = append(codes, arguments(goSources(t, "internal/card"), "add", 1)...)
	codes = append(codes, arguments(goSources(t, "internal/card"), "needs", 1)...)
	codes = append(codes, matches(t, `code: '([a-z-]+)'`)...)
	codes = append(codes, matches(t, `refused\('([a-z-]+)'`)...)
	figures := slices.Concat(fields(jobs, "figures"), arguments(jobs, "Card", 0), arguments(jobs, "Unknown", 0), arguments(jobs, "Estimate", 0), arguments(jobs, "practice", 0))
	return []family{
		{"finding.", codes, []string{"", ".do"}},
		{"finding.", []string{"finished-without"}, []string{".several"}}, // differIn of ui/findings.js
		{"step.", append(fields(jobs, "word"), plan.OtherVersion), []string{"", ".do", ".why"}},
		{"step.", []string{"leak-look"}, []string{".more"}}, // what an instruction says beyond its acts, where it says more
		{"caution.", append(fields(jobs, "warns"), arguments(jobs, "CautionOf", 0)...), []string{"", ".more"}},
		{"figure.", figures, plain},
		{"take.", append(texts([]card.Drive{card.Hexagon, card.HexagonKey, card.SixLobe}), "hexagon-bit", "filter-grip", "filter-cup"), plain},
		{"take.filter-", texts([]card.FilterKind{card.SpinOn, card.Cartridge, card.KindUnknown}), plain},
		{"method.", arguments(jobs, "Estimate", 1), plain},
		{"lookup.", slices.Concat(arguments(jobs, "Card", 2), arguments(jobs, "Unknown", 1), arguments(jobs, "gap", 1)), plain},
		{"gap.", arguments(jobs, "gap", 0), []string{"", ".of"}},
		{"asked.names.", texts(find.Named), plain},
		{"facts.", []string{"2", "3"}, plain},
		{"grade.", []string{"2", "3"}, plain},
		{"mark.", []string{"2", "3"}, plain},
		{"either.", []string{"2", "3"}, plain},
		{"plate.tool.", platedTools(), plain},
		{"ask.", append(slices.Clone(plan.Readings), job.AskOther, job.AskSeen), plain},
		{"use.", texts([]due.Use{due.Gained, due.Risen, due.Little, due.Usual, due.High, due.Undue}), plain},
		{"use-trend.", texts([]due.Trend{due.Steady, due.More, due.Less, due.Doubled}), plain},
		{"timer.", plan.Timers, plain},
		{"say.", saidUnits(), plain},
		{"own.", texts(card.OwnFigures), plain},
		{"told.", append(texts(garage.Tellings), "card"), plain},
		{"unit.", unitsInWords(t), plain},
		{"stage.", texts(plan.Stages), plain},
		{"signal.", texts([]plan.Signal{plan.Danger, plan.Warning, plan.Caution, plan.Notice}), plain},
		{"record.costs.", []string{"bill", "estimate"}, plain},
		{"log.filter.", matches(t, `(?m)^  (\w+): \(\{ summary`), plain},
		{"warmth.", texts(drain.Warmths), plain},
		{"cool.", texts(drain.Courses), plain},
		{"caught.", texts([]fill.Caught{fill.AsMuch, fill.Less, fill.FarLess, fill.More, fill.NoCompare}), plain},
		{"pressure.", texts([]oil.Pressed{oil.PressureGone, oil.PressureBelow, oil.PressureAbove, oil.GaugeDecides, oil.NotComparable, oil.PressureRight}), plain},
		{"amend.", texts([]fill.Advice{fill.AddOil, fill.Leave, fill.Full, fill.TakeOut, fill.Unsure}), plain},
		{"poured.", texts([]fill.Verdict{fill.Short, fill.Right, fill.Over, fill.FarOver, fill.NoFigure}), plain},
	}
}

// platedTools are what a fastener may be turned with, as the plate calls it.
func platedTools() []string {
	tools := []string{"filter-cup", "filter-grip", "size-unknown", "hexagon-bit"}
	for _, drive := range card.Drives {
		if drive != card.Hand && drive != card.Strap {
			tools = append(tools, string(drive))
		}
	}
	return tools
}

// unitsInWords are the units that the core writes as a word of English: all others
// are symbols, which are the same in every language.
func unitsInWords(t *testing.T) []string {
	t.Helper()
	list := []string{"days", "weeks", "months", "years", "turn"}
	for _, id := range list {
		if _, known := quantity.Find(id); !known {
			t.Errorf("there is no unit %q", id)
		}
	}
	return list
}

// saidUnits are those that a figure of a step may have.
func saidUnits() []string {
	unsaid := []quantity.Kind{quantity.Pressure, quantity.Mass, quantity.Viscosity, quantity.Density, quantity.Area, quantity.Share}
	var list []string
	for _, u := range quantity.Units {
		if !slices.Contains(unsaid, u.Kind) {
			list = append(list, u.ID)
		}
	}
	return list
}

// schemaWords are the words that a card may use.
func schemaWords(t *testing.T) []family {
	var list []family
	for stem, place := range map[string]string{
		"layout.": "properties/layout", "apart.": "properties/layout", "role.": "$defs/circuit/properties/role", "standing.": "$defs/standing",
		"device.": "$defs/level/properties/device", "state.": "$defs/level/properties/state", "stance.": "$defs/level/properties/stance",
		"purpose.": "$defs/bolt/properties/purpose", "drive.": "$defs/bolt/properties/drive", "seal.": "$defs/seal/properties/kind",
		"mount.": "$defs/filter/properties/mount", "note-at.": "$defs/noteAt/properties/at",
		"ring-with.": "$defs/filter/properties/ringWith", "ran.": "$defs/level/properties/state",
	} {
		list = append(list, family{stem, enum(t, place), plain})
	}
	for _, stem := range []string{"coat.", "coat-rings."} {
		list = append(list, family{stem, append(enum(t, "$defs/filter/properties/ringWith"), "unknown"), plain})
	}
	byHand := func(drive string) bool { return drive == "hand" || drive == "strap" }
	cleaned := func(kind string) bool { return kind == "centrifugal" }
	list = append(list, family{"part.filter-", slices.DeleteFunc(enum(t, "$defs/filter/properties/kind"), cleaned), plain})
	return append(list,
		family{"tool.", slices.DeleteFunc(enum(t, "$defs/bolt/properties/drive"), byHand), plain},
		family{"standing.", []string{"measured", "decided", "estimated", "standard"}, []string{".from"}})
}

func enum(t *testing.T, place string) []string {
	t.Helper()
	v := instance(t, specs.CardSchema)
	for name := range strings.SplitSeq(place, "/") {
		v = v.(map[string]any)[name]
	}
	var list []string
	for _, word := range v.(map[string]any)["enum"].([]any) {
		if word != "" {
			list = append(list, word.(string))
		}
	}
	if len(list) < 2 {
		t.Fatalf("schema %s has the words %v", place, list)
	}
	return list
}

var radios = regexp.MustCompile(`radios\(\s*'[\w.-]+',\s*'([\w.-]+)',[^\[]*\[('[^\]]*')\]`)

// pageWords are those that the page puts together by itself.
func pageWords(t *testing.T) []family {
	list := []family{
		{"core.", matches(t, `state === '(\w+)'`), plain},
		{"nav.", matches(t, `tab: '(\w+)'`), plain},
		{"level.", choices(t, "levels", 8), plain},
		{"due.calendar.", []string{"saved", "shared", "failed"}, plain},
		{"page.", []string{"out", "in", "level"}, plain},
		{"page.part.", texts(job.PageParts), plain},
		{"manner.", []string{job.AsCard, job.Afterwards}, plain},
		{"seen.", []string{job.AnswerNothing}, plain},
		{"leak.", choices(t, "leaks", 3), plain},
		{"photo.what.", texts(plan.Motifs), plain},
		{"details.tell.", texts(garage.Tellings), plain},
		{"plan.units.", texts(quantity.Systems), plain},
		{"plan.place.", texts(plan.Places), plain},
		{"record.", texts(job.Phases), plain},
		{"restore.", []string{"jobs", "events", "facts", "cards", "photos", "settings", "lines"}, plain},
		{"unread.", []string{"job", "event", "fact", "card", "photo", "setting", "beside", "bare", "named", "dated", "both"}, plain},
		{"keep.size.", []string{"mb", "gb"}, plain},
		{"storage.promise.", []string{"granted", "refused", "not-asked", "unknown"}, plain},
		{"storage.rule.", []string{"webkit", "chromium"}, plain},
		{"storage.rule.gecko.", []string{"refused", "not-asked"}, plain},
		{"home.", matches(t, `\['([a-z-]+)', \{ steps`), []string{"", ".picture"}},
		{"event.", eventKinds(t), plain},
		{"bikes.due.", []string{"day", "at", "both"}, plain},
		{"bikes.filter.", []string{"all", "on", "mine", "due", "aside", "examples"}, plain},
		{"draft.", []string{"pending", "written"}, plain},
		{"pack.", []string{"new", "changed", "same", "refused"}, []string{"", ".why"}},
		{"plan.filter.", []string{"change", "keep"}, []string{".short"}},
	}
	for kind, lines := range aidCards(t) {
		list = append(list, family{"aid.", []string{kind}, plain}, family{"aid-title.", []string{kind}, plain}, family{"aid-source.", []string{kind}, plain}, family{"aid." + kind + ".", slices.Concat(lines, aidEnds), plain})
	}
	for _, path := range filesOf(t, ".js", "static/app") {
		for _, m := range radios.FindAllStringSubmatch(readText(t, path), -1) {
			list = append(list, family{m[1] + ".", strings.Split(strings.ReplaceAll(strings.ReplaceAll(m[2], "'", ""), " ", ""), ","), plain})
		}
	}
	return list
}

// eventKinds are those of internal/job.
func eventKinds(t *testing.T) []string {
	t.Helper()
	var list []string
	for _, path := range filesOf(t, ".go", "internal/job") {
		for _, m := range regexp.MustCompile(`EventKind = "(\w+)"`).FindAllStringSubmatch(readText(t, path), -1) {
			list = append(list, m[1])
		}
	}
	return list
}

// choices are the answers that steps offer, in the lists of the sources whose
// names end so: of the oil level, on a gauge and at a hole, and of leaks.
func choices(t *testing.T, name string, least int) []string {
	var list []string
	for _, path := range filesOf(t, ".go", "internal/plan", "internal/job") {
		for _, m := range regexp.MustCompile(`(?i)`+name+` = \[\]string\{([^}]*)\}`).FindAllStringSubmatch(readText(t, path), -1) {
			list = append(list, strings.Split(strings.ReplaceAll(strings.ReplaceAll(m[1], `"`, ""), " ", ""), ",")...)
		}
	}
	if len(list) < least {
		t.Fatalf("the sources list the %s %v", name, list)
	}
	return list
}

// matches lists what the first group of a pattern finds in the page's modules.
func matches(t *testing.T, pattern string) []string {
	t.Helper()
	var list []string
	for _, path := range filesOf(t, ".js", "static/app") {
		for _, m := range regexp.MustCompile(pattern).FindAllStringSubmatch(readText(t, path), -1) {
			list = append(list, m[1])
		}
	}
	return list
}

func texts[T ~string](list []T) []string {
	var out []string
	for _, s := range list {
		out = append(out, string(s))
	}
	return out
}

// Each id that a family can put together is in the catalogue, and each stem of
// which the page makes ids is a family's.
func TestFamilies_AreComplete(t *testing.T) {
	words := catalogue(t)
	stems := map[string]bool{}
	for _, f := range families(t) {
		stems[f.stem] = true
		if len(f.members) == 0 {
			t.Errorf("the family %s has no members", f.stem)
		}
		for _, member := range f.members {
			for _, ending := range f.endings {
				if id := f.stem + member + ending; words[id] == "" && !silent(f.stem, member) {
					t.Errorf("the catalogue has no %q%s", id, beside(t, f, ending))
				}
			}
		}
	}
	for _, stem := range matches(t, "`([a-z][a-z.-]*\\.)\\$\\{") {
		if !stems[stem] {
			t.Errorf("the page makes ids of %q: pageWords (families_test.go) don't say of what", stem)
		}
	}
}

// beside says in which part of the catalogue the words of a family with that ending lie;
// nothing where there is none yet.
func beside(t *testing.T, f family, ending string) string {
	words := map[string]int{}
	for part := range specs.Words()[0].Parts {
		for _, member := range f.members {
			if specs.Words()[0].Part(part)[f.stem+member+ending] != "" {
				words[part]++
			}
		}
	}
	most := ""
	for part, n := range words {
		if n > words[most] {
			most = part
		}
	}
	if most == "" {
		return ""
	}
	return "; such words are in " + most + ".json"
}

// silent are the states of the core that need no sentence.
func silent(stem, member string) bool {
	return stem == "core." && member != "restarting" && member != "failed"
}

// Every word of the catalogue is somebody's: a family's, or written out in full
// in a Go source, a module of the page, its HTML or the changelog.
func TestFamilies_NoWordIsIdle(t *testing.T) {
	used := map[string]bool{}
	for _, f := range families(t) {
		for _, member := range f.members {
			for _, ending := range f.endings {
				used[f.stem+member+ending] = true
			}
		}
	}
	for _, text := range literals(goSources(t, "internal", "server", "wasm")) {
		used[strings.TrimPrefix(text, "@")] = true
	}
	for _, path := range filesOf(t, ".js", "static/app") {
		for _, s := range readScript(t, readText(t, path)).texts {
			used[strings.TrimPrefix(s.text, "@")] = true
		}
	}
	for _, m := range regexp.MustCompile(`"([\w.-]+)"`).FindAllStringSubmatch(readText(t, "../static/changelog.json"), -1) {
		used[m[1]] = true
	}
	benchUses(t, used)
	billHints(t, used)
	for _, file := range []string{"../static/index.html", "../static/manifest.webmanifest", "../server/pages/pages.html"} {
		for _, m := range regexp.MustCompile(`\{(?:t ")?([a-z.-]+)"?\}`).FindAllStringSubmatch(readText(t, file), -1) {
			used[m[1]] = true
		}
	}
	for _, id := range slices.Sorted(maps.Keys(catalogue(t))) {
		if !used[id] {
			t.Errorf("%q is used nowhere", id)
		}
	}
}

var (
	said     = regexp.MustCompile(`\bt\('([\w.-]+)'`)
	wordID   = regexp.MustCompile(`^[a-z][\w-]*(\.[\w-]+)*\.[\w-]*\w$`)
	fileName = regexp.MustCompile(`\.(json|wasm|jpg)$`)
)

// Every word that a module of the page writes out in full is in the catalogue: what
// it says itself, and what it hands on to be said, which looks like other words.
func TestFamilies_NoWordIsMissing(t *testing.T) {
	words, begins := catalogue(t), map[string]bool{}
	for id := range words {
		begins[strings.Split(id, ".")[0]] = true
	}
	for _, path := range filesOf(t, ".js", "static/app") {
		source := readText(t, path)
		ids := map[string]bool{}
		for _, m := range said.FindAllStringSubmatch(source, -1) {
			ids[m[1]] = true
		}
		for _, s := range readScript(t, source).texts {
			id := strings.TrimPrefix(s.text, "@")
			if wordID.MatchString(id) && begins[strings.Split(id, ".")[0]] && !fileName.MatchString(id) {
				ids[id] = true
			}
		}
		for id := range ids {
			if words[id] == "" {
				t.Errorf("%s says %q, and the catalogue has no such word", path, id)
			}
		}
	}
}
