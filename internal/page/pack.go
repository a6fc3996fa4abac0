package page

import (
	"encoding/base64"
	"encoding/binary"
	"math"

	"lostwood/internal/mesh"
	"lostwood/parts/form"
)

// A skin is a mesh as the page carries it: every corner in steps of a 65535th
// of the box, then the triangles' corners, both in 16 bits, little-endian.
type skin struct {
	Low       [3]float64 `json:"low"`
	Step      [3]float64 `json:"step"` // millimetres
	Corners   int        `json:"corners"`
	Triangles int        `json:"triangles"`
	Wide      bool       `json:"wide,omitempty"` // triangles in 32 bits
	Data      string     `json:"data"`
}

// steps is into how many a box is divided each way.
const steps = math.MaxUint16

func pack(m *mesh.Mesh) skin {
	b := m.Bounds()
	low := [3]float64{b.Min.X.Millimetres(), b.Min.Y.Millimetres(), b.Min.Z.Millimetres()}
	high := [3]float64{b.Max.X.Millimetres(), b.Max.Y.Millimetres(), b.Max.Z.Millimetres()}
	s := skin{Low: rounded(low[:]...), Corners: len(m.Vertices), Triangles: len(m.Triangles), Wide: len(m.Vertices) > steps}
	for i := range s.Step {
		s.Step[i] = (high[i] - s.Low[i]) / steps
	}
	var data []byte
	for _, v := range m.Vertices {
		for i, x := range [3]form.Length{v.X, v.Y, v.Z} {
			data = binary.LittleEndian.AppendUint16(data, quantised(x.Millimetres(), s.Low[i], s.Step[i]))
		}
	}
	for _, t := range m.Triangles {
		for _, c := range t {
			if s.Wide {
				data = binary.LittleEndian.AppendUint32(data, uint32(c))
			} else {
				data = binary.LittleEndian.AppendUint16(data, uint16(c))
			}
		}
	}
	s.Data = base64.StdEncoding.EncodeToString(data)
	return s
}

func quantised(x, low, step float64) uint16 {
	if step <= 0 {
		return 0
	}
	return uint16(min(max(math.Round((x-low)/step), 0), steps))
}
