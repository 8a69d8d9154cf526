package app

import (
	"errors"
	"path"
	"strings"

	"readback/mobile/page"
)

// Policy is the content policy both shells send with the page.
const Policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; media-src 'self' blob:; " +
	"connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

var kinds = map[string]string{
	".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8",
	".svg": "image/svg+xml", ".png": "image/png", ".webmanifest": "application/manifest+json",
}

// pageFile is a file of the page, its words in the language of the hub.
func (h *Hub) pageFile(name string) (int, string, []byte) {
	name = strings.TrimPrefix(name, "/")
	if name == "" {
		name = "index.html"
	}
	if name == "words.js" {
		return 200, kinds[".js"], wordsModule(h.words)
	}
	data, err := page.Files.ReadFile(path.Clean("/" + name)[1:])
	kind := kinds[path.Ext(name)]
	if err != nil || kind == "" {
		return 404, jsonType, problem(errors.New("request: no such page"))
	}
	if name == "index.html" {
		data = []byte(inPage(h.words, string(data)))
	}
	return 200, kind, data
}
