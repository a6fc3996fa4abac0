package adjust_test
import ("testing";"lostwood/internal/adjust";"os";"strconv")
func TestTm2(t *testing.T){
 p:=wagon(300,1)
 e,_:=strconv.Atoi(os.Getenv("EV"))
 var drop []int
 for i:=0;i<len(p.Observations);i+=e {drop=append(drop,i)}
 _,err:=adjust.Solve(adjust.Without(p,drop...))
 t.Log(err)
}
