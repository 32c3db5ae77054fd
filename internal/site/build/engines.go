package build

import "github.com/evanw/esbuild/pkg/api"

// oldest are the browsers that the page promises to run in, each in its oldest version:
// what newer ones read more briefly is written out for them.
var oldest = []api.Engine{
	{Name: api.EngineIOS, Version: "15.4"},
	{Name: api.EngineFirefox, Version: "140"}, // the release with long support before the last
	{Name: api.EngineChrome, Version: "102"},
}
