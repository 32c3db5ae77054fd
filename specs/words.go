package specs

import (
	"embed"
	"encoding/json"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"strings"
	"sync"
)

//go:embed words
var words embed.FS

const (
	// FirstPart is the part of a catalogue with what the first screen says.
	FirstPart = "first"
	// SitePart is the part that the page doesn't load: what its HTML and its
	// manifest say before it runs. Only the default's is used.
	SitePart = "site"

	languageFile = "language.json"
)

// Language is one language of the word catalogue: a folder of specs/words.
type Language struct {
	Tag  string // BCP 47; the name of the folder
	Name string // in the language itself
	Dir  string // in which it is written: "ltr" or "rtl"
	// Parts are the catalogue's files, by name without ".json": each an object
	// from word id to entry. An entry is a sentence, or an object of sentences
	// by plural category, as the value {count} has it, or the one that the
	// object's member "by" names. They are whole: what a language lacks is the
	// default's.
	Parts map[string][]byte
}

// Words are the languages that are built in, the default first.
var Words = sync.OnceValue(func() []Language {
	folder, err := fs.Sub(words, "words")
	if err != nil {
		panic(err) // the folder is embedded: it is always there
	}
	list, err := ReadWords(folder)
	if err != nil {
		panic(err) // a test has read it
	}
	return list
})

// Sentences is the whole catalogue of the default language: word id to sentence.
func Sentences() map[string]string { return Words()[0].Sentences() }

// Sentences is the whole catalogue: word id to sentence; of an entry with forms
// that of the category "other".
func (l Language) Sentences() map[string]string {
	all := map[string]string{}
	for part := range l.Parts {
		maps.Copy(all, l.Part(part))
	}
	return all
}

// Part is one part of it.
func (l Language) Part(name string) map[string]string {
	list := l.entries(name)
	sentences := make(map[string]string, len(list))
	for id, e := range list {
		sentences[id] = e.Other
	}
	return sentences
}

// Entries is the whole catalogue with the forms of its sentences: word id to entry.
func (l Language) Entries() map[string]Entry {
	all := map[string]Entry{}
	for part := range l.Parts {
		maps.Copy(all, l.entries(part))
	}
	return all
}

func (l Language) entries(part string) map[string]Entry {
	var list map[string]Entry
	if err := json.Unmarshal(l.Parts[part], &list); err != nil {
		panic(fmt.Errorf("%s: %w", part, err)) // ReadWords has read it
	}
	return list
}

// Entry is an entry of a catalogue.
type Entry struct {
	Other string            // its sentence, or the one for the category "other"
	Forms map[string]string // by plural category; nil where it has one sentence
	By    string            // the value that says which; "" for "count"
}

// UnmarshalJSON reads a sentence, or an object of sentences by plural category.
func (e *Entry) UnmarshalJSON(text []byte) error {
	if text[0] == '"' {
		return json.Unmarshal(text, &e.Other)
	}
	if err := json.Unmarshal(text, &e.Forms); err != nil {
		return err
	}
	e.By = e.Forms["by"]
	if e.Other = e.Forms["other"]; e.Other == "" {
		return fmt.Errorf("%s has no form for the category other", text)
	}
	return nil
}

// ReadWords reads a folder of languages: each is a folder with the same parts,
// and language.json, which gives its name and its direction. One of them says
// that it is the default; it comes first, the others follow by their tags.
func ReadWords(folder fs.FS) ([]Language, error) {
	files, err := fs.Glob(folder, "*/"+languageFile)
	if err != nil {
		return nil, err
	}
	var list, first []Language
	for _, file := range files {
		l, isDefault, err := readLanguage(folder, path.Dir(file))
		if err != nil {
			return nil, fmt.Errorf("language %s: %w", path.Dir(file), err)
		}
		if isDefault {
			first = append(first, l)
		} else {
			list = append(list, l)
		}
	}
	if len(first) != 1 {
		return nil, fmt.Errorf("%d of the %d languages are the default, not one", len(first), len(files))
	}
	for _, l := range list {
		if err := l.complete(first[0]); err != nil {
			return nil, fmt.Errorf("language %s: %w", l.Tag, err)
		}
	}
	return append(first, list...), nil
}

func readLanguage(folder fs.FS, tag string) (l Language, isDefault bool, err error) {
	l = Language{Tag: tag, Parts: map[string][]byte{}}
	files, err := fs.Glob(folder, tag+"/*.json")
	if err != nil {
		return l, false, err
	}
	for _, file := range files {
		text, err := fs.ReadFile(folder, file)
		if err != nil {
			return l, false, err
		}
		l.Parts[strings.TrimSuffix(path.Base(file), ".json")] = text
	}
	var is struct {
		Name, Dir string
		Default   bool
	}
	part := strings.TrimSuffix(languageFile, ".json")
	if err := json.Unmarshal(l.Parts[part], &is); err != nil {
		return l, false, fmt.Errorf("%s: %w", languageFile, err)
	}
	delete(l.Parts, part)
	if is.Name == "" || (is.Dir != "ltr" && is.Dir != "rtl") {
		return l, false, fmt.Errorf("%s: name %q, dir %q", languageFile, is.Name, is.Dir)
	}
	l.Name, l.Dir = is.Name, is.Dir
	for name, text := range l.Parts {
		if err := json.Unmarshal(text, &map[string]Entry{}); err != nil {
			return l, false, fmt.Errorf("%s: %w", name, err)
		}
	}
	return l, is.Default, nil
}

// complete puts the default's words where the language has none. A part or a
// word that the default doesn't have would never be read: it is an error.
func (l Language) complete(fallback Language) error {
	for name := range l.Parts {
		if _, has := fallback.Parts[name]; !has {
			return fmt.Errorf("%s has no part %q", fallback.Tag, name)
		}
	}
	for name, theirs := range fallback.Parts {
		var all, own map[string]json.RawMessage
		if err := json.Unmarshal(theirs, &all); err != nil {
			return err
		}
		if text, has := l.Parts[name]; has {
			if err := json.Unmarshal(text, &own); err != nil {
				return err
			}
		}
		for id, entry := range own {
			if all[id] == nil {
				return fmt.Errorf("%s: %s has no word %q there", name, fallback.Tag, id)
			}
			all[id] = entry
		}
		whole, err := json.Marshal(all)
		if err != nil {
			return err
		}
		l.Parts[name] = whole
	}
	return nil
}
