package render

// mat is a plane homography, row by row.
type mat [9]float64

func (m mat) apply(x, y float64) (float64, float64) {
	w := m[6]*x + m[7]*y + m[8]
	return (m[0]*x + m[1]*y + m[2]) / w, (m[3]*x + m[4]*y + m[5]) / w
}

func mul(a, b mat) mat {
	var c mat
	for i := range 3 {
		for j := range 3 {
			for k := range 3 {
				c[i*3+j] += a[i*3+k] * b[k*3+j]
			}
		}
	}
	return c
}

func invert(m mat) mat {
	return mat{
		m[4]*m[8] - m[5]*m[7], m[2]*m[7] - m[1]*m[8], m[1]*m[5] - m[2]*m[4],
		m[5]*m[6] - m[3]*m[8], m[0]*m[8] - m[2]*m[6], m[2]*m[3] - m[0]*m[5],
		m[3]*m[7] - m[4]*m[6], m[1]*m[6] - m[0]*m[7], m[0]*m[4] - m[1]*m[3],
	}
}

// Homography is the plane map that takes the four src corners to dst.
func Homography(src, dst [4][2]float64) [9]float64 {
	var a [8][9]float64
	for i := range 4 {
		x, y, u, v := src[i][0], src[i][1], dst[i][0], dst[i][1]
		a[2*i] = [9]float64{x, y, 1, 0, 0, 0, -u * x, -u * y, u}
		a[2*i+1] = [9]float64{0, 0, 0, x, y, 1, -v * x, -v * y, v}
	}
	for c := range 8 {
		p := c
		for r := c + 1; r < 8; r++ {
			if abs(a[r][c]) > abs(a[p][c]) {
				p = r
			}
		}
		a[c], a[p] = a[p], a[c]
		for r := range 8 {
			if r == c || a[c][c] == 0 {
				continue
			}
			f := a[r][c] / a[c][c]
			for k := c; k < 9; k++ {
				a[r][k] -= f * a[c][k]
			}
		}
	}
	h := [9]float64{8: 1}
	for i := range 8 {
		h[i] = a[i][8] / a[i][i]
	}
	return h
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}
