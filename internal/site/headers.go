package site

import (
	"maps"
	"net/http"
	"strings"
)

// contentSecurityPolicy allows this origin's files and nothing inline. The two
// trusted-types policies are ours (static/app/site/trusted.js) and lit-html's own.
var contentSecurityPolicy = strings.Join([]string{
	"default-src 'none'",
	"script-src 'self' 'wasm-unsafe-eval'",
	"style-src 'self'",
	"img-src 'self' blob: data:",
	"connect-src 'self'",
	"manifest-src 'self'",
	"worker-src 'self'",
	"base-uri 'none'",
	"form-action 'none'",
	"frame-ancestors 'none'",
	"require-trusted-types-for 'script'",
	"trusted-types app lit-html",
}, "; ")

// permissionsPolicy keeps what a job uses: the screen lock, the camera, which
// reads cards from another phone, the microphone, which the phone's own
// recognition of speech asks for, copying a text that is to be sent, and pasting the
// page of a manual. It gives up the rest that browsers know.
var permissionsPolicy = strings.Join([]string{
	"screen-wake-lock=(self)", "camera=(self)", "microphone=(self)", "clipboard-write=(self)",
	"clipboard-read=(self)",
	"accelerometer=()", "autoplay=()", "display-capture=()",
	"encrypted-media=()", "gamepad=()", "geolocation=()", "gyroscope=()", "hid=()",
	"idle-detection=()", "local-fonts=()", "magnetometer=()", "midi=()",
	"payment=()", "publickey-credentials-get=()", "serial=()", "usb=()",
	"window-management=()", "xr-spatial-tracking=()",
}, ", ")

// securityHeaders are the OWASP secure headers, less those that would switch off
// what an offline program lives on, no Clear-Site-Data, no no-store, and less what is
// the host's own decision, no Strict-Transport-Security. All answers share them.
var securityHeaders = http.Header{
	"Content-Security-Policy":           {contentSecurityPolicy},
	"Permissions-Policy":                {permissionsPolicy},
	"X-Content-Type-Options":            {"nosniff"},
	"X-Frame-Options":                   {"DENY"},
	"X-Permitted-Cross-Domain-Policies": {"none"},
	"Referrer-Policy":                   {"no-referrer"},
	"Cross-Origin-Opener-Policy":        {"same-origin"},
	"Cross-Origin-Embedder-Policy":      {"require-corp"},
	"Cross-Origin-Resource-Policy":      {"same-origin"},
}

// SecurityHeaders returns the headers that every answer has, a copy.
func SecurityHeaders() http.Header { return securityHeaders.Clone() }

// Secure sets the security headers on every answer of next.
func Secure(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		maps.Copy(w.Header(), securityHeaders)
		next.ServeHTTP(w, r)
	})
}

// cacheControl lets a copy under a hashed name live for ever, and has every
// other copy asked about before it is used.
func (f *File) cacheControl() string {
	if f.Hashed {
		return "public, max-age=31536000, immutable"
	}
	return "no-cache"
}

// etag names one form of the file's bytes: another encoding is another form.
func (f *File) etag(token string) string {
	if token != "" {
		token = "-" + token
	}
	return `"` + f.Sum[:16] + token + `"`
}
