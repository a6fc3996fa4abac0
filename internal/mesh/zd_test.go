package mesh_test
import ("testing";"lostwood/internal/mesh";"os";"strconv")
func TestZD(t *testing.T){
	seed,_ := strconv.Atoi(os.Getenv("SEED")); tol,_ := strconv.ParseFloat(os.Getenv("TOL"), 64)
	snap,_ := strconv.ParseFloat(os.Getenv("SNAP"), 64)
	r := chanceOf(int64(seed))
	v := r.any()
	if r.one(2) { v = r.place().volume(v) }
	v = jitter(r, v)
	mesh.Debug(compiled(t, v), tol, 0, snap)
}
