package build

import "github.com/evanw/esbuild/pkg/api"

// oldest are the browsers that the page promises to run in, each in its oldest version:
// what newer ones read more briefly is written out for them.
var oldest = []api.Engine{
	{Name: api.EngineIOS, Version: "15.4"},
	{Name: api.EngineFirefox, Version: "140"}, // the release with long support before the last
	{Name: api.EngineChrome, Version: "102"},
}

// engineNames are the names by which people are told of browsers.
var engineNames = map[api.EngineName]string{
	api.EngineIOS: "iOS", api.EngineFirefox: "Firefox", api.EngineChrome: "Chrome",
}

// Oldest returns the browsers that the page promises to run in, by the names that people
// are told, each with its oldest version: {"iOS": "15.4"}.
func Oldest() map[string]string {
	told := map[string]string{}
	for _, e := range oldest {
		told[engineNames[e.Name]] = e.Version
	}
	return told
}
