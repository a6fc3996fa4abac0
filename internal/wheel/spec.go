package wheel

// A Spec says what a wheel is. An optional figure of 0 stands for no such thing.
type Spec struct {
	Use       Use
	Condition Condition
	Height    Length // the wheel's diameter, finished
	Over      Over   // what the height is measured over
	Tyre      Tyre
	Rim       Rim
	Spokes    Spokes
	Nave      Nave
	Box       Box
	Dish      Dish
	Arm       Arm   // no arm where its length is 0
	Track     Track // not asked where it is 0
}

// A Use is the kind of wheel, as the rules for tyres sort them.
type Use int

// The uses.
const (
	Wagon Use = iota
	HeavyWagon
	Carriage // a light wheel
	LightCart
	HeavyCart
)

// String is the kind in words.
func (u Use) String() string {
	return word(int(u), "wagon", "heavy wagon", "carriage", "light cart", "heavy cart")
}

// A Condition is how the wooden wheel stands before its tyre goes on.
type Condition int

// The conditions.
const (
	Sound      Condition = iota // straight and tight
	Poor                        // worn, or its joints no longer good
	MuchDished                  // dished as far as it ought to be already
)

// String is the condition in words.
func (c Condition) String() string { return word(int(c), "sound", "poor", "much dished") }

// An Over says what a wheel's height is measured over. Published heights often do not.
type Over int

// What a height is measured over.
const (
	OverTyre Over = iota
	OfWood        // the felloes' outside, under the tyre
)

// String is the choice in words.
func (o Over) String() string { return word(int(o), "over the tyre", "of the wood") }

// A Tyre is the iron hoop.
type Tyre struct {
	Wide, Thick Length
	Bolt        Length // diameter of the tyre bolts' holes, one a felloe; 0 for none
	// Nip is how much shorter its inside is than the girth of the wooden rim, as
	// wanted; 0 takes what the trade gives for the wheel's use and condition.
	Nip Length
}

// A Rim is the ring of felloes.
type Rim struct {
	Felloes   int
	Wide      Length // across; 0 is as wide as the tyre
	Deep      Length // from belly to sole, in the middle of the rim
	Gap       Length // left open at each joint, before the tyre goes on
	Dowel     Length // diameter of the dowel in each joint; 0 for none
	DowelDeep Length // into either felloe
	Eased     Length // radius of the belly's edges; 0 leaves them sharp
	Sole      Sole
}

// A Sole says how a rim's outside is made.
type Sole int

// The ways a rim's outside is made.
const (
	ConedSole Sole = iota // square to the spokes, so that the tyre lies flat on the ground
	LevelSole             // level with the axle arm: a plain hoop
)

// String is the choice in words.
func (s Sole) String() string {
	return word(int(s), "coned, square to the spokes", "level with the axle")
}

// Spokes are all of a wheel's, which are alike.
type Spokes struct {
	Number  int
	Stagger Length // from the middle of one mortise circle to the middle of the other, along the axle; 0 for one circle
	// The foot is the tenon in the nave: wide front to back, thick round the
	// nave, long from the shoulder. FootPoint is its width at its inner end; 0 is parallel.
	FootWide, FootThick, FootLong Length
	FootPoint                     Length
	Square                        Length // how far it is left square beyond the shoulder
	// The section of the square, and of the oval at its outer end: wide front to
	// back, thick round the wheel.
	Wide, Thick       Length
	TipWide, TipThick Length
	Tongue            Tongue
}

// A Tongue is the tenon in the felloe.
type Tongue struct {
	Form  TongueForm
	Thick Length // diameter, or side of the square
	Short Length // how far it stops below the sole; 0 is flush
}

// A TongueForm is a tongue's section.
type TongueForm int

// The forms of tongues.
const (
	RoundTongue TongueForm = iota
	SquareTongue
)

// String is the form in words.
func (f TongueForm) String() string { return word(int(f), "round", "square") }

// A Nave is the hub of turned wood.
type Nave struct {
	Long     Length
	Diameter Length // in the middle of the mortises
	// Front and Back are the diameters at its ends.
	Front, Back Length
	Forward     Length // from midway between the mortise circles to its front end
	SeatLong    Length // how much of it, along the axle, is turned for the spokes' shoulders
	Seat        Seat
	Bands       []Band // from the back to the front
}

// A Seat says how the nave is turned where the spokes' shoulders stand.
type Seat int

// The ways a seat is turned.
const (
	// SeatLevel is a plain cylinder: each shoulder is cut to the dish. In a
	// staggered wheel face and back spokes then differ a little in length.
	SeatLevel Seat = iota
	// SeatSquare falls to the front as the spokes lean, square to them, so that
	// face and back spokes have one length.
	SeatSquare
)

// String is the choice in words.
func (s Seat) String() string { return word(int(s), "level", "square to the spokes") }

// A Band is a hoop on the nave.
type Band struct {
	Name  string // "linchpin band"
	From  Length // from the nave's back end to the band's back edge
	Wide  Length
	Thick Length
	// Large and Small are its inside diameters at the edge nearer the spokes and
	// at the other one; 0 for both takes the nave's own there.
	Large, Small Length
}

// A Box is the iron lining of the nave.
type Box struct {
	Long         Length
	Large, Small Length // its bore at the back and at the front
	Wall         Length // thickness of the iron
	In           Length // from the nave's back end to the box's
	// BackRecess and FrontRecess are the diameters the nave is bored to behind
	// and before the box, for the collar and for the linchpin or nut; 0 is as wide as the box there.
	BackRecess, FrontRecess Length
}

// A Dish is how far the rim stands out from the feet of the spokes, along the axle.
type Dish struct {
	Built Length // before the tyre is on
	Tyred Length // with the tyre on, as the wheel runs
	On    DishOn
}

// A DishOn says what a dish is measured between.
type DishOn int

// What a dish is measured between.
const (
	// Faces: from the front of the mortises (of the face spokes, where
	// staggered) to the face of the rim, as with a straight-edge across it.
	Faces DishOn = iota
	// Middles: from midway between the mortise circles to the middle of the rim.
	Middles
)

// String is the choice in words.
func (d DishOn) String() string { return word(int(d), "from face to face", "from middle to middle") }

// An Arm is the end of the axle that the wheel runs on.
type Arm struct {
	Long     Length // from the collar's face to its point
	AtCollar Length // diameter
	AtPoint  Length
	Set      Setting
	Cant     Angle  // how far its middle line falls towards its point, where Set is AsFound
	Gather   Length // how far forward the arm points, over half the wheel's height
}

// A Setting says what an arm's cant is taken from.
type Setting int

// What a cant is taken from.
const (
	PlumbSpoke   Setting = iota // exactly so much that the bottom spoke stands plumb
	Construction                // the drawn rule: the dish over half the wheel's height
	AsFound                     // as measured on the arm
)

// String is the choice in words.
func (s Setting) String() string {
	return word(int(s), "for a plumb bottom spoke", "by the drawn rule, dish over half the height", "as found")
}

// A Track is how far apart the two wheels of an axle run on the ground.
type Track struct {
	Wide Length
	Over TrackOver
}

// A TrackOver says what a track is measured between.
type TrackOver int

// What a track is measured between.
const (
	TyreMiddles TrackOver = iota
	TyreOutsides
)

// String is the choice in words.
func (t TrackOver) String() string {
	return word(int(t), "middle to middle of the tyres", "over the outsides of the tyres")
}

func word(i int, words ...string) string {
	if i < 0 || i >= len(words) {
		return "none of these"
	}
	return words[i]
}
