package book

import (
	"encoding/binary"
	"errors"
	"io"
	"io/fs"
	"os"
)

// walFrames is what a look at a write-ahead log came to.
type walFrames struct {
	whole int // frames that can be read, up to the last commit
	lost  int // frames of the same log behind one that is damaged
}

// The sizes of the header of a write-ahead log and of the header of each of its frames, in
// bytes. Source: the SQLite file format, section 4.1, "WAL File Format".
const walHeader, walFrame = 32, 24

// readWAL follows the checksums of the write-ahead log beside the book at path. SQLite
// stops in silence at the first frame that is damaged; here what comes behind it is
// counted. A frame is of this log where it bears its salts; those of earlier rounds don't.
func readWAL(path string) (w walFrames, err error) {
	f, err := os.Open(path + "-wal")
	if errors.Is(err, fs.ErrNotExist) {
		return w, nil
	}
	if err != nil {
		return w, plainFile(err)
	}
	defer f.Close()
	head := make([]byte, walHeader)
	if _, err := io.ReadFull(f, head); err != nil {
		return w, nil // empty: all is folded in
	}
	order := binary.ByteOrder(binary.LittleEndian)
	if head[3]&1 == 1 {
		order = binary.BigEndian
	}
	sum := walSum(order, [2]uint32{}, head[:24])
	damaged := sum != stored(head[24:])
	frame := make([]byte, walFrame+int(binary.BigEndian.Uint32(head[8:])))
	if len(frame) > 1<<16+walFrame || len(frame) < 512+walFrame {
		return walFrames{lost: 1}, nil
	}
	for since := 0; ; {
		if _, err := io.ReadFull(f, frame); err != nil {
			return w, nil
		}
		if string(frame[8:16]) != string(head[16:24]) {
			damaged = true
			continue
		}
		sum = walSum(order, sum, frame[:8])
		sum = walSum(order, sum, frame[walFrame:])
		damaged = damaged || sum != stored(frame[16:])
		if damaged {
			w.lost++
			continue
		}
		if since++; binary.BigEndian.Uint32(frame[4:]) > 0 { // the last of a commit
			w.whole, since = w.whole+since, 0
		}
	}
}

func stored(b []byte) [2]uint32 {
	return [2]uint32{binary.BigEndian.Uint32(b), binary.BigEndian.Uint32(b[4:])}
}

// walSum goes on with the running checksum of a write-ahead log. Source: the SQLite file
// format, section 4.2, "Checksum Algorithm".
func walSum(order binary.ByteOrder, sum [2]uint32, b []byte) [2]uint32 {
	for i := 0; i+8 <= len(b); i += 8 {
		sum[0] += order.Uint32(b[i:]) + sum[1]
		sum[1] += order.Uint32(b[i+4:]) + sum[0]
	}
	return sum
}
