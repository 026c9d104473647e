package supply

import (
	"fmt"
	"math"

	"eyeup/odds"
	"eyeup/quantity"
)

// Bag is how mix or packing is sold. A loose bag gives what it says; a compressed bale
// swells when it is broken up and wetted.
type Bag struct {
	Volume quantity.Volume // as printed on it
	Swells float64         // volume loose to volume printed; 1 for a loose bag
}

// Loose returns a bag that gives the volume printed on it.
func Loose(v quantity.Volume) Bag { return Bag{v, 1} }

// Compressed returns a bale that swells by the usual factor, some 1.8: read the label
// where it tells one.
func Compressed(v quantity.Volume) Bag { return Bag{v, figure("bale", "swells").Value} }

// Bags is how many bags to get.
type Bags struct {
	Bag  Bag
	Low  int // were the need at its low
	Get  int // enough for the middle
	High int // enough in nine cases out of ten
}

// For returns how many whole bags hold so many litres of loose mix. It fails for a bag of
// no volume, or one that would shrink.
func (b Bag) For(litres odds.Amount) (Bags, error) {
	loose := b.Volume.Litres() * b.Swells
	if !(b.Volume > 0) || !(b.Swells >= 1) || math.IsInf(loose, 0) {
		return Bags{}, fmt.Errorf("a bag of %g L that swells %g times can't be counted in; give a volume above 0 and 1 (loose) or more", b.Volume.Litres(), b.Swells)
	}
	if !(litres.High/loose < 1e9) {
		return Bags{}, fmt.Errorf("bags of %g L are too small for %g L; give a larger one", b.Volume.Litres(), litres.High)
	}
	whole := func(need float64) int { return int(math.Ceil(need/loose - 1e-9)) }
	return Bags{Bag: b, Low: whole(litres.Low), Get: whole(litres.Middle), High: whole(litres.High)}, nil
}
