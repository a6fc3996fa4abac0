package mesh
import "lostwood/internal/solid"
func Once(s *solid.Solid, tol float64, try int, snap float64) (*Mesh, error) { return skin(s, style{tolerance: tol*slack, try: try, snap: snap}) }
