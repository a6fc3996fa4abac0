package adjust_test
import ("testing";"lostwood/internal/adjust";"time")
func TestTmp(t *testing.T){
 for _,n:=range []int{300,600,1200,2400} {
 p:=wagon(n,1)
 for _,every:=range []int{4,5,6,7,8,9} {
 var drop []int
 for i:=0;i<len(p.Observations);i+=every {drop=append(drop,i)}
 a:=time.Now()
 s,err:=adjust.Solve(adjust.Without(p,drop...))
 if err!=nil { t.Log(n,every,err,time.Since(a));continue}
 m:=0
 for _,f:=range s.Free {m+=len(f)}
 t.Log(n,every,len(s.Free),m,err,time.Since(a),s.Iterations)
 }}
}
