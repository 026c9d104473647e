package odds

import (
	"crypto/sha256"
	"encoding/binary"
	"math/rand/v2"
)

// Stream returns a source of chance that is told by a seed and a name. The same two
// give the same figures for ever, on every machine, whatever other streams were used
// before: so each thing that needs chance names its own, such as "normals/1987", and
// none disturbs another.
func Stream(seed uint64, name string) *rand.Rand {
	b := binary.BigEndian.AppendUint64(nil, seed)
	h := sha256.Sum256(append(b, name...))
	return rand.New(rand.NewPCG(binary.BigEndian.Uint64(h[0:]), binary.BigEndian.Uint64(h[8:])))
}
