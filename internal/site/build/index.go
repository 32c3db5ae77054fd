package build

import (
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"tidysump/internal/site"
)

const (
	manifestName = "manifest.webmanifest"
	swName       = "sw.js"
	scriptName   = "app/watch.js" // Options.Script

	versionMark = "__VERSION__" // stands in the page until the version is known
	headEnd     = "</head>"
)

// reference finds the attributes of index.html that name files of the site; what ends
// with a slash is no file.
var reference = regexp.MustCompile(`\b(href|src)="/([^"#?]*[^"#?/])"`)

// addIndex makes the page's HTML. Whoever writes index.html names files as they
// lie in the static folder (href="/app/main.css"); each such name is replaced
// by the one it is served under, and one that names nothing stops the build.
// Where {id} stands, the sentence of that id is put. Before </head> come the preloads of Options.Preload, those of the page's first
// parts, and the version.
func (s *Site) addIndex(o Options) error {
	source, err := os.ReadFile(filepath.Join(o.Static, site.IndexName))
	if err != nil {
		return err
	}
	var missing []string
	page := reference.ReplaceAllStringFunc(string(source), func(attribute string) string {
		part := reference.FindStringSubmatch(attribute)
		url, ok := s.names[part[2]]
		if !ok {
			missing = append(missing, part[2])
		}
		return fmt.Sprintf(`%s="%s"`, part[1], url)
	})
	if missing != nil {
		return fmt.Errorf("%s names files that the site does not have: %s", site.IndexName, strings.Join(missing, ", "))
	}
	page, err = o.say(page, html.EscapeString)
	if err != nil {
		return fmt.Errorf("%s: %w", site.IndexName, err)
	}
	head, err := s.headLines(o)
	if err != nil {
		return err
	}
	if !strings.Contains(page, headEnd) {
		return fmt.Errorf("%s has no %s", site.IndexName, headEnd)
	}
	return s.addFixed(site.IndexName, []byte(strings.Replace(page, headEnd, head+headEnd, 1)))
}

// headLines are the lines that only the build can write.
func (s *Site) headLines(o Options) (string, error) {
	var b strings.Builder
	for _, name := range o.Preload {
		url, ok := s.names["data/"+name]
		if !ok {
			return "", fmt.Errorf("the site has no data file %s to preload", name)
		}
		fmt.Fprintf(&b, `<link rel="preload" as="fetch" crossorigin="anonymous" href="%s">`, url)
	}
	for _, url := range s.first {
		fmt.Fprintf(&b, `<link rel="modulepreload" href="%s">`, url)
	}
	if url, ok := s.names[scriptName]; ok {
		fmt.Fprintf(&b, `<script type="module" src="%s"></script>`, url)
	}
	fmt.Fprintf(&b, `<meta name="version" content="%s"><meta name="built" content="%s">`, versionMark, s.Built)
	return b.String(), nil
}
