package app

import (
	"encoding/json"
	"fmt"

	"readback/core/protocol"
)

// Call is what the page sends over its socket or message port: a request with a number of its own.
type Call struct {
	ID     int64           `json:"id"`
	Method string          `json:"method"`
	Path   string          `json:"path"`
	Body   json.RawMessage `json:"body,omitempty"`
}

// Reply answers a Call. Body is JSON, or a JSON string of the text when the answer is none.
type Reply struct {
	Re     int64           `json:"re"`
	Status int             `json:"status"`
	Body   json.RawMessage `json:"body"`
}

const maxMessage = 64 << 10

// Message answers one text message of the page: the JSON of a Call in, the JSON of its Reply out. A message that is not one
// gets status 400 with a reason. It never fails.
func (h *Hub) Message(msg []byte) []byte {
	var c Call
	if len(msg) > maxMessage {
		return reply(0, 400, problem(fmt.Errorf("a message of %d bytes is more than %d", len(msg), maxMessage)))
	}
	if err := decodeStrict(msg, &c); err != nil {
		return reply(c.ID, 400, problem(fmt.Errorf("message: %w", err)))
	}
	status, kind, data := h.Request(c.Method, c.Path, c.Body)
	if kind != jsonType {
		text, err := json.Marshal(string(data))
		if err != nil {
			panic("ui: a string cannot be encoded")
		}
		data = text
	}
	return reply(c.ID, status, data)
}

func reply(re int64, status int, body []byte) []byte {
	out, err := json.Marshal(Reply{Re: re, Status: status, Body: body})
	if err != nil {
		panic("ui: a reply cannot be encoded: " + err.Error())
	}
	return out
}

func problem(err error) []byte {
	data, mErr := json.Marshal(struct {
		Error string `json:"error"`
	}{err.Error()})
	if mErr != nil {
		panic("ui: an error cannot be encoded")
	}
	return data
}

// decodeStrict decodes exactly one JSON value and refuses fields it does not know.
func decodeStrict(data []byte, v any) error { return protocol.Strict(data, v) }
