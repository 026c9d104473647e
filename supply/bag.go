package supply

import (
	"fmt"
	"math"

	"eyeup/odds"
	"eyeup/quantity"
)

// Bag is how mix or packing is sold. A loose bag gives the volume on its label; a compressed
// bale expands when it is broken up and wetted.
type Bag struct {
	Volume quantity.Volume // as printed on it
	Swells float64         // loose volume divided by printed volume; 1 for a loose bag
}

// Loose returns a bag that gives the volume printed on it.
func Loose(v quantity.Volume) Bag { return Bag{v, 1} }

// Compressed returns a bale with the usual expansion of about 1.8; prefer the label's figure.
func Compressed(v quantity.Volume) Bag { return Bag{v, figure("bale", "swells").Value} }

// Bags is how many bags to buy.
type Bags struct {
	Bag  Bag
	Low  int // for the low estimate of the need
	Get  int // for the median
	High int // enough in nine cases out of ten
}

// For returns how many whole bags hold the litres of loose mix. It fails for a bag without
// volume, or one that would shrink.
func (b Bag) For(litres odds.Amount) (Bags, error) {
	loose := b.Volume.Litres() * b.Swells
	if !(b.Volume > 0) || !(b.Swells >= 1) || math.IsInf(loose, 0) {
		return Bags{}, fmt.Errorf("a bag of %g L that expands %g times is not possible; give a volume above 0 and an expansion of 1 (loose) or more", b.Volume.Litres(), b.Swells)
	}
	if !(litres.High/loose < 1e9) {
		return Bags{}, fmt.Errorf("bags of %g L are too small for %g L; give a larger one", b.Volume.Litres(), litres.High)
	}
	whole := func(need float64) int { return int(math.Ceil(need/loose - 1e-9)) }
	return Bags{Bag: b, Low: whole(litres.Low), Get: whole(litres.Middle), High: whole(litres.High)}, nil
}
