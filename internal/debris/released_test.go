package debris_test

import (
	"bufio"
	"compress/gzip"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"tidysump/internal/debris"
)

// released are the verdicts of the versions up to 2026.11.3, as these came to them: by
// the rule with the names of its answers, the largest piece from its size on. They are
// kept since records hold signs of those versions.
var released = []struct {
	found, amount, colour, oil string
	size                       int
	verdict                    debris.Verdict
}{
	{found: "nothing", verdict: debris.Normal},
	{found: "paste", verdict: debris.Normal},
	{found: "fuzz", verdict: debris.Normal},
	{found: "glitter", verdict: debris.Watch},
	{found: "flakes", verdict: debris.Watch},
	{found: "flakes", amount: "many", verdict: debris.Stop},
	{found: "flakes", size: debris.FiveMillimetres, verdict: debris.Stop},
	{found: "sand", verdict: debris.Stop},
	{found: "chip", verdict: debris.Watch},
	{found: "chip", size: debris.FiveMillimetres, verdict: debris.Stop},
	{found: "part", verdict: debris.Stop},
	{found: "coil", verdict: debris.Stop},
	{found: "clutch", verdict: debris.Watch},
	{found: "plastic", verdict: debris.Watch},
	{found: "plastic", size: debris.Larger, verdict: debris.Stop},
	{found: "sealant", verdict: debris.Watch},
	{oil: "dark", verdict: debris.Normal},
	{oil: "foam", verdict: debris.Watch},
	{oil: "milky", verdict: debris.Stop},
	{oil: "water", verdict: debris.Stop},
	{oil: "fuel", verdict: debris.Watch},
	{oil: "burnt", verdict: debris.Watch},
}

// asReleased is the verdict on a sign as those versions came to it, with the steps
// that a noise or the lamp, more than last time and the first service made.
func asReleased(answers map[string]string, size int) debris.Verdict {
	worst := debris.Unsaid
	for _, r := range released {
		if (r.found == "" || r.found == answers["found"]) && (r.oil == "" || r.oil == answers["oil"]) &&
			(r.amount == "" || r.amount == answers["amount"]) && size >= r.size {
			worst = max(worst, r.verdict)
		}
	}
	sick := answers["noise"] == debris.Yes || answers["lamp"] == debris.Yes
	more := answers["more"] == debris.Yes
	step := map[debris.Verdict]debris.Verdict{debris.Unsaid: debris.Watch, debris.Normal: debris.Watch, debris.Watch: debris.Stop, debris.Stop: debris.Stop}
	if answers["colour"] == "dull" && answers["found"] == "flakes" && sick {
		worst = debris.Stop
	}
	if sick {
		worst = step[worst]
	}
	if more && worst > debris.Unsaid {
		worst = step[worst]
	}
	small := answers["found"] == "glitter" || size > 0 && size <= debris.TwoMillimetres
	if answers["firstService"] == debris.Yes && worst == debris.Watch && !sick && !more && small {
		return debris.Normal
	}
	return worst
}

// Every sign that a released version could write is understood, and judged as then or
// worse.
func TestRead_Released(t *testing.T) {
	count := 0
	yes := []string{"", debris.Yes}
	for _, found := range []string{"", "nothing", "paste", "fuzz", "glitter", "flakes", "sand", "chip", "part", "coil", "clutch", "plastic", "sealant"} {
		for size, largest := range []string{"", "half", "two", "five", "larger"} {
			for _, amount := range []string{"", "few", "many"} {
				for _, colour := range []string{"", "bright", "dull", "reddish"} {
					for _, oil := range []string{"", "dark", "foam", "milky", "water", "fuel", "burnt"} {
						for tick := range 16 {
							answers := map[string]string{"found": found, "size": largest, "amount": amount, "colour": colour, "oil": oil,
								"noise": yes[tick&1], "lamp": yes[tick>>1&1], "more": yes[tick>>2&1], "firstService": yes[tick>>3&1]}
							s, wrong := debris.Read(answers)
							got, _ := debris.Judge(&s)
							if was := asReleased(answers, size); len(wrong) > 0 || got < was {
								t.Fatalf("%v: %s, and it was %s; not understood: %v", answers, debris.Verdicts[got], debris.Verdicts[was], wrong)
							}
							count++
						}
					}
				}
			}
		}
	}
	if count != 13*5*3*4*7*16 {
		t.Errorf("%d signs", count)
	}
}

// What the released programs wrote of looks themselves is understood, and judged as
// they judged it or worse.
func TestRead_ReleasedBackups(t *testing.T) {
	files, err := filepath.Glob("../../testdata/backups/*.jsonl.gz")
	if err != nil || len(files) == 0 {
		t.Fatal("no backups", err)
	}
	looks, fuel := 0, 0
	for _, path := range files {
		for _, signs := range looksIn(t, path) {
			s, wrong := debris.Read(signs)
			got, _ := debris.Judge(&s)
			if was := asReleased(signs, 1+slices.Index(debris.Sizes, signs["size"])); len(wrong) > 0 || got < was {
				t.Errorf("%s: %v: %s, and it was %s; not understood: %v", path, signs, debris.Verdicts[got], debris.Verdicts[was], wrong)
			}
			looks++
			if signs["oil"] == "fuel" {
				fuel++
			}
		}
	}
	if looks < 10 || fuel == 0 {
		t.Errorf("%d looks, %d of them with fuel in the oil", looks, fuel)
	}
}

// looksIn gives the signs of the looks in a backup.
func looksIn(t *testing.T, path string) []map[string]string {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	text, err := gzip.NewReader(file)
	if err != nil {
		t.Fatal(path, err)
	}
	var list []map[string]string
	lines := bufio.NewScanner(text)
	lines.Buffer(nil, 1<<24)
	for lines.Scan() {
		var line struct {
			Event struct {
				Kind  string            `json:"kind"`
				Signs map[string]string `json:"signs"`
			} `json:"event"`
		}
		if json.Unmarshal(lines.Bytes(), &line) == nil && line.Event.Kind == "look" {
			list = append(list, line.Event.Signs)
		}
	}
	if err := lines.Err(); err != nil {
		t.Fatal(path, err)
	}
	return list
}
