package main

import (
	"bytes"
	"context"
	"fmt"
	"os/exec"
	"strings"

	"readback/mobile/desktop/web"
	"readback/mobile/ui"
	"readback/speech/model"
)

func makeVoice() web.Voice {
	return func(ctx context.Context, text, level string, slow bool) ([]byte, error) {
		cmd := exec.CommandContext(ctx, "espeak-ng", "--stdout", "-s", "155")
		cmd.Stdin = strings.NewReader(text)
		var out bytes.Buffer
		cmd.Stdout = &out
		if err := cmd.Run(); err != nil {
			return nil, fmt.Errorf("espeak-ng: %w", err)
		}
		return out.Bytes(), nil
	}
}

func cueWAV(string) []byte { return nil }

func hearing() ui.Speech { return ui.Recogniser(model.Locate) }
