package specs_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

func backupSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	if err := c.AddResource("backup", instance(t, rootFile(t, "specs/backup.schema.json"))); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("backup")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// samples are backups of each version, and the kinds of lines that each has.
var samples = map[string][]string{
	"testdata/backup-1.txt": {"format", "setting", "card", "job", "event", "photo", "end", "seal"},
	"testdata/backup-2.txt": {"format", "setting", "card", "aside", "job", "event", "beside", "photo", "end", "seal"},
	"testdata/backup-3.txt": {"format", "setting", "card", "fact", "aside", "job", "event", "beside", "photo", "end", "seal"},
}

// Each line of a backup that any version of the page made is as the schema says; the
// page's own tests restore it.
func TestBackup_LinesFitTheSchema(t *testing.T) {
	s := backupSchema(t)
	for name, want := range samples {
		kinds := map[string]bool{}
		for line := range bytes.Lines(rootFile(t, name)) {
			v := instance(t, line)
			if err := s.Validate(v); err != nil {
				t.Errorf("%s, %.80s: %v", name, line, err)
			}
			for kind := range v.(map[string]any) {
				kinds[kind] = true
			}
		}
		for _, kind := range want {
			if !kinds[kind] {
				t.Errorf("%s has no line of %q", name, kind)
			}
		}
	}
}

func TestBackup_SchemaRefuses(t *testing.T) {
	s := backupSchema(t)
	for _, line := range []string{
		`{}`, `[]`, `{"format":"tidysump-backup","version":4,"made":"2026-11-25T12:00:00.000Z"}`, `{"setting":{"key":"a"}}`,
		`{"event":{"id":"1"}}`, `{"fact":{"book":"bike","of":"b","id":"1","kind":"told"}}`, `{"photo":{"job":"a","id":"1","what":"pan","data":"*"}}`, `{"seal":"0"}`, `{"end":{}}`,
		`{"seal":"` + strings.Repeat("0", 64) + `","end":{}}`, `{"wheel":{}}`,
	} {
		if s.Validate(instance(t, []byte(line))) == nil {
			t.Errorf("%s is accepted", line)
		}
	}
}

// The seal is what the schema's description says, worked out by other code than
// the page's.
func TestBackup_Seal(t *testing.T) {
	for name := range samples {
		text := rootFile(t, name)
		at := bytes.LastIndex(text, []byte(`{"seal"`))
		digest := sha256.Sum256(text[:at]) // of a file below 1 MiB there is one piece
		whole := sha256.Sum256(digest[:])
		if want := `{"seal":"` + hex.EncodeToString(whole[:]) + "\"}\n"; string(text[at:]) != want {
			t.Errorf("%s: seal %s, want %s", name, text[at:], want)
		}
	}
}
