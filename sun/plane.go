package sun

import (
	"math"

	"eyeup/quantity"
)

// Plane is a flat surface, such as a wall or one side of a roof.
type Plane struct {
	Slope  float64 // degrees from level: 0 a floor, 90 a wall
	Facing float64 // degrees clockwise from north to which its outer side looks
}

// Incidence returns the share of the sun's beam that falls on the plane's outer side: the
// cosine between the beam and the plane's outward line, 0 when the sun is down or behind.
func (p Plane) Incidence(s Sky) float64 {
	z, slope := radians(s.Zenith), radians(p.Slope)
	if s.Height() <= 0 {
		return 0
	}
	return max(0, math.Cos(z)*math.Cos(slope)+
		math.Sin(z)*math.Sin(slope)*math.Cos(radians(s.Azimuth-p.Facing)))
}

// SkyView returns the share of the sky's light on level ground that the plane's outer side
// gets, the sky being equally bright all over. Source: Liu & Jordan 1963, Solar Energy 7:53.
func (p Plane) SkyView() float64 { return (1 + math.Cos(radians(p.Slope))) / 2 }

// GroundView returns the share of the light thrown back by level ground that the plane's
// outer side gets. Source: Liu & Jordan 1963.
func (p Plane) GroundView() float64 { return (1 - math.Cos(radians(p.Slope))) / 2 }

// On returns the sun on the plane's outer side from the beam on a surface turned towards
// the sun, the light of the sky on level ground, and the share of light that the ground
// throws back (0.2 grass, 0.6 and more snow; common practice).
func (p Plane) On(s Sky, beam, diffuse quantity.Irradiance, thrownBack quantity.Share) quantity.Irradiance {
	level := beam*quantity.Irradiance(max(0, s.Height())) + diffuse
	return beam*quantity.Irradiance(p.Incidence(s)) +
		diffuse*quantity.Irradiance(p.SkyView()) +
		level*quantity.Irradiance(float64(thrownBack)*p.GroundView())
}
