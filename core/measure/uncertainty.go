package measure

import "math"

// Rectangular is the standard uncertainty of a value equally likely anywhere within ±a (GUM 4.3.7).
func Rectangular(a float64) float64 { return a / math.Sqrt(3) }

// Triangular is the standard uncertainty of a value within ±a and likelier in the middle (GUM 4.3.9).
func Triangular(a float64) float64 { return a / math.Sqrt(6) }

// Rounding is the standard uncertainty of rounding to steps of d: 0.29 d (GUM F.2.2.1).
func Rounding(d float64) float64 { return d / math.Sqrt(12) }

// FromLevel is the standard uncertainty of a normal value whose half-width a holds with the given level (GUM 4.3.4).
func FromLevel(a, level float64) float64 { return a / Quantile((1+level)/2) }

// Combine adds independent standard uncertainties in quadrature (GUM 5.1.2).
func Combine(us ...float64) float64 {
	sum := 0.0
	for _, u := range us {
		sum += u * u
	}
	return math.Sqrt(sum)
}

// Phi is the standard normal distribution function.
func Phi(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }

// Quantile is the inverse of Phi for 0 < p < 1.
func Quantile(p float64) float64 { return math.Sqrt2 * math.Erfinv(2*p-1) }

// Normal is the density of the normal distribution with mean m and standard deviation s > 0.
func Normal(x, m, s float64) float64 {
	z := (x - m) / s
	return math.Exp(-z*z/2) / (s * math.Sqrt(2*math.Pi))
}

// between is Φ((b-m)/s) - Φ((a-m)/s) for a ≤ b, exact to relative precision in both tails.
func between(a, b, m, s float64) float64 {
	za, zb := (a-m)/s, (b-m)/s
	if za > 0 { // mirror to the lower tail, where Erfc keeps its digits
		za, zb = -zb, -za
	}
	return 0.5 * (math.Erfc(-zb/math.Sqrt2) - math.Erfc(-za/math.Sqrt2))
}

// Conformance is the probability that a value known as N(y, u) lies within low..high (JCGM 106 7.2 to 7.4).
// An open end is -Inf or +Inf. With u = 0 it is 0 or 1.
func Conformance(y, u, low, high float64) float64 {
	if u == 0 {
		if low <= y && y <= high {
			return 1
		}
		return 0
	}
	return between(low, high, y, u)
}

// Posterior combines a normal prior N(y0, u0) with a reading r of standard uncertainty u (JCGM 106 A.4.4).
func Posterior(y0, u0, r, u float64) (y, uy float64) {
	d := u0*u0 + u*u
	return (u*u*y0 + u0*u0*r) / d, u0 * u / math.Sqrt(d)
}
