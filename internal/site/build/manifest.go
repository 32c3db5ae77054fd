package build

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// addManifest makes the web app manifest, in which each "src" of an icon or a
// screenshot gets the name it is served under, and each {id} is a sentence.
func (s *Site) addManifest(o Options) error {
	source, err := os.ReadFile(filepath.Join(o.Static, manifestName))
	if err != nil {
		return err
	}
	said, err := o.say(string(source), escapeJSON)
	if err != nil {
		return fmt.Errorf("%s: %w", manifestName, err)
	}
	var manifest map[string]any
	if err := json.Unmarshal([]byte(said), &manifest); err != nil {
		return fmt.Errorf("%s: %w", manifestName, err)
	}
	for _, member := range []string{"icons", "screenshots"} {
		pictures, _ := manifest[member].([]any)
		for _, p := range pictures {
			if err := s.renamePicture(p); err != nil {
				return fmt.Errorf("%s: %s: %w", manifestName, member, err)
			}
		}
	}
	out, err := json.Marshal(manifest)
	if err != nil {
		return err
	}
	return s.addFixed(manifestName, out)
}

// escapeJSON writes a text as it stands between the quotes of a JSON string.
func escapeJSON(text string) string {
	quoted, err := json.Marshal(text)
	if err != nil {
		panic(err) // a string can always be written
	}
	return string(quoted[1 : len(quoted)-1])
}

func (s *Site) renamePicture(picture any) error {
	fields, ok := picture.(map[string]any)
	if !ok {
		return fmt.Errorf("an entry is not an object")
	}
	src, _ := fields["src"].(string)
	url, ok := s.names[strings.TrimPrefix(src, "/")]
	if !ok {
		return fmt.Errorf("the site has no file %q", src)
	}
	fields["src"] = url
	return nil
}
