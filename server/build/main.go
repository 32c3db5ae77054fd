// Command build builds the page and writes it as one archive, which the server
// carries inside.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"

	"tidysump/internal/site/build"
	"tidysump/specs"
)

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run() error {
	var from sources
	flag.StringVar(&from.static, "static", "static", "`folder` of the page's sources")
	flag.StringVar(&from.core, "core", "build/core.wasm", "`path` of the core; wasm_exec.js and licences.txt lie beside it")
	flag.BoolVar(&from.whole, "whole-core", false, "don't slim the core: for a version of Go that slimming doesn't know")
	flag.StringVar(&from.words, "words", "", "`folder` of languages in place of those inside, laid out as specs/words is")
	flag.StringVar(&from.cache, "cache", "build/compressed", "`folder` that keeps compressed files between builds")
	flag.BoolVar(&from.quick, "quick", false, "compress little, for a site that is built again in a moment")
	flag.StringVar(&from.script, "script", "", "one more module for the page to load, as this `path`")
	oldest := flag.Bool("oldest", false, "write the oldest browsers that the page is built for, as JSON, and stop")
	out := flag.String("out", "server/site.zip", "`path` of the archive to write")
	flag.Parse()
	if *oldest {
		return json.NewEncoder(os.Stdout).Encode(build.Oldest())
	}

	built, err := from.site()
	if err != nil {
		return err
	}
	return built.Save(*out)
}

// sources say where the page's parts lie.
type sources struct {
	static, core, words, cache string
	script                     string // one more module of the page; empty for none
	quick                      bool   // compress little
	whole                      bool   // leave the core as it is built, see build.Options.WholeCore
}

// site builds the page with its data.
func (from sources) site() (*build.Site, error) {
	languages := specs.Words()
	if from.words != "" {
		var err error
		if languages, err = specs.ReadWords(os.DirFS(from.words)); err != nil {
			return nil, err
		}
	}
	data, err := dataFiles(from.core, languages)
	if err != nil {
		return nil, err
	}
	var spoken []build.Language
	for _, l := range languages {
		spoken = append(spoken, build.Language{Tag: l.Tag, Name: l.Name, Dir: l.Dir})
	}
	return build.Build(build.Options{
		Static: from.static, Core: from.core, WholeCore: from.whole, Cache: from.cache, Quick: from.quick, Script: from.script,
		Data: data, Fixed: fixedFiles(), Preload: firstScreen(languages[0].Tag),
		Languages: spoken, Sentences: languages[0].Sentences(),
	})
}
