package build

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
)

const changelogName = "changelog.json"

// addChangelog takes in what changed when, as one more data file.
func (s *Site) addChangelog(o Options) error {
	body, err := os.ReadFile(filepath.Join(o.Static, changelogName))
	if err != nil {
		return err
	}
	if s.Built == "" {
		if s.Built, err = newestDate(body); err != nil {
			return err
		}
	}
	s.inputs = append(s.inputs, changelogName)
	return s.addHashed("data/"+changelogName, body)
}

// newestDate returns the date of the first entry of a changelog.
func newestDate(changelog []byte) (string, error) {
	var entries []struct {
		Date string `json:"date"`
	}
	if err := json.Unmarshal(changelog, &entries); err != nil {
		return "", fmt.Errorf("%s: %w", changelogName, err)
	}
	if len(entries) == 0 {
		return "", fmt.Errorf("%s has no entry", changelogName)
	}
	return entries[0].Date, nil
}
