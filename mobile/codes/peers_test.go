package codes_test

import (
	"image"
	"image/png"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/oned"
	"github.com/makiuchi-d/gozxing/qrcode"

	"readback/mobile/codes"
)

// TestPeers reads the same drawn codes with zbarimg, side by side, in the run that make peers starts.
func TestPeers(t *testing.T) {
	if os.Getenv("PEERS") == "" {
		t.Skip("PEERS is not set: make peers compares with other tools")
	}
	if _, err := exec.LookPath("zbarimg"); err != nil {
		t.Skip("zbarimg is not installed: package zbar-tools")
	}
	const n = 20
	for _, k := range []struct {
		name   string
		w      gozxing.Writer
		format gozxing.BarcodeFormat
		text   string
		cw, ch int
		lo, hi float64 // pixels per module
	}{
		{"QR", qrcode.NewQRCodeWriter(), gozxing.BarcodeFormat_QR_CODE, "PART 0130F00010", 180, 180, 0.4, 1.6},
		{"Code 128", oned.NewCode128Writer(), gozxing.BarcodeFormat_CODE_128, "SN20481234", 300, 90, 0.5, 1.5},
		{"Code 39", oned.NewCode39Writer(), gozxing.BarcodeFormat_CODE_39, "B18099-13", 320, 80, 0.5, 1.5},
	} {
		own, other := 0, 0
		r := rand.New(rand.NewPCG(11, 12))
		for i := range uint64(n) {
			p := shoot(t, k.w, k.format, k.text, k.cw, k.ch, 360*r.Float64(), k.lo+(k.hi-k.lo)*r.Float64(), 7_000_000+i)
			if got, err := codes.Read(p); err == nil && len(got) == 1 && got[0].Text == k.text {
				own++
			}
			path := filepath.Join(t.TempDir(), "code.png")
			f, err := os.Create(path)
			if err != nil {
				t.Fatal(err)
			}
			err = png.Encode(f, &image.Gray{Pix: p.Y, Stride: p.Stride, Rect: image.Rect(0, 0, p.W, p.H)})
			if f.Close(); err != nil {
				t.Fatal(err)
			}
			out, _ := exec.Command("zbarimg", "-q", "--raw", path).Output() // finding nothing is its failure exit
			if strings.TrimSpace(string(out)) == k.text {
				other++
			}
		}
		t.Logf("%-10s this program %d, zbarimg %d of %d", k.name, own, other, n)
	}
}
