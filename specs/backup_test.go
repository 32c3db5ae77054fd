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

// Each line of a backup that an earlier version of the page made is as the
// schema says; the page's own tests restore it.
func TestBackup_LinesFitTheSchema(t *testing.T) {
	s := backupSchema(t)
	kinds := map[string]bool{}
	for line := range bytes.Lines(rootFile(t, "testdata/backup-1.txt")) {
		v := instance(t, line)
		if err := s.Validate(v); err != nil {
			t.Errorf("%.80s: %v", line, err)
		}
		for name := range v.(map[string]any) {
			kinds[name] = true
		}
	}
	for _, kind := range []string{"format", "setting", "card", "job", "event", "photo", "end", "seal"} {
		if !kinds[kind] {
			t.Errorf("the sample has no line of %q", kind)
		}
	}
}

func TestBackup_SchemaRefuses(t *testing.T) {
	s := backupSchema(t)
	for _, line := range []string{
		`{}`, `[]`, `{"format":"tidysump-backup","version":2,"made":"2026-11-25T12:00:00.000Z"}`, `{"setting":{"key":"a"}}`,
		`{"event":{"id":"1"}}`, `{"photo":{"job":"a","id":"1","what":"pan","data":"*"}}`, `{"seal":"0"}`, `{"end":{}}`,
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
	text := rootFile(t, "testdata/backup-1.txt")
	at := bytes.LastIndex(text, []byte(`{"seal"`))
	digest := sha256.Sum256(text[:at]) // of a file below 1 MiB there is one piece
	whole := sha256.Sum256(digest[:])
	if want := `{"seal":"` + hex.EncodeToString(whole[:]) + "\"}\n"; string(text[at:]) != want {
		t.Errorf("seal %s, want %s", text[at:], want)
	}
}
