package timber

import "lostwood/internal/quantity"

// Celsius is a temperature in degrees Celsius.
type Celsius float64

// Fahrenheit returns a temperature in degrees Fahrenheit as Celsius.
func Fahrenheit(f float64) Celsius { return Celsius((f - 32) / 1.8) }

// Humidity is relative humidity as a fraction: 0.65 for 65 %.
type Humidity float64

// The temperatures of Wood Handbook table 4-2, 30 to 270 degrees Fahrenheit;
// the ends are from memory.
const (
	coldest Celsius = (30 - 32) / 1.8
	hottest Celsius = (270 - 32) / 1.8
)

// EMC returns the moisture that wood comes to in air of a temperature and a
// humidity: Wood Handbook 2021 eq. 4-5, in its metric form. A humidity below
// nothing, or of one and more, and a temperature outside the handbook's table
// give a *[RangeError].
func EMC(temperature Celsius, humidity Humidity) (quantity.Moisture, error) {
	if err := within("temperature, degrees Celsius", float64(temperature), float64(coldest), float64(hottest)); err != nil {
		return 0, err
	}
	h := float64(humidity)
	if h == 1 {
		return 0, &RangeError{What: "relative humidity, as a part of one", Got: h, Max: 0.999, Want: "in air at 100 % wood takes up water without end; write 99 % at most"}
	}
	if !(h >= 0 && h < 1) { // true for NaN
		return 0, &RangeError{What: "relative humidity, as a part of one", Got: h, Max: 0.999, Want: "65 % is written 0.65"}
	}
	t := float64(temperature)
	w := 349 + 1.29*t + 0.0135*t*t
	k := 0.805 + 0.000736*t - 0.00000273*t*t
	k1 := 6.27 - 0.00938*t - 0.000303*t*t
	k2 := 1.91 + 0.0407*t - 0.000293*t*t
	kh := k * h
	dissolved := kh / (1 - kh)
	bound := (k1*kh + 2*k1*k2*kh*kh) / (1 + k1*kh + k1*k2*kh*kh)
	return quantity.Moisture(1800 / w * (dissolved + bound)), nil
}
