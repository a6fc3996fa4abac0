// Lengths as people read them: the same words as in the record's tables.

const INCH = 25.4;

function mixed(parts, den) {
  const whole = Math.floor(parts / den);
  let n = parts % den;
  if (n === 0) return String(whole);
  let d = den;
  while (n % 2 === 0) { n /= 2; d /= 2; }
  return whole === 0 ? `${n}/${d}` : `${whole} ${n}/${d}`;
}

const parts = (mm, den) => Math.floor((Math.abs(mm) / INCH) * den + 0.5 + 1e-9);

function fraction(mm, den) {
  const n = parts(mm, den);
  return (mm < 0 && n > 0 ? '-' : '') + mixed(n, den);
}

function feet(mm, den) {
  const n = parts(mm, den);
  const whole = Math.floor(n / (12 * den));
  const rest = n % (12 * den);
  const sign = mm < 0 && n > 0 ? '-' : '';
  if (whole > 0 && rest === 0) return `${sign}${whole} ft`;
  return sign + (whole > 0 ? `${whole} ft ` : '') + mixed(rest, den) + ' in';
}

const decimal = (v, places) => (Number(v.toFixed(places)) === 0 ? (0).toFixed(places) : v.toFixed(places));

// length writes millimetres in a unit.
export function length(mm, unit) {
  switch (unit) {
    case 'ft': return feet(mm, 32);
    case 'mm': return decimal(mm, 1) + ' mm';
    case 'cm': return decimal(mm / 10, 2) + ' cm';
    case 'm': return decimal(mm / 1000, 4) + ' m';
  }
  return fraction(mm, 32) + ' in';
}

const up = (v, step) => Math.ceil((v / step) * (1 - 1e-12)) * step;

// giveOrTake rounds up to a step people use, so that it is never less than it is.
function giveOrTake(mm, unit) {
  const covers = (step) => step >= mm * (1 - 1e-12);
  if (unit === 'in' || unit === 'ft') {
    const step = [1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96].map((n) => (n * INCH) / 64).find(covers);
    const whole = step ?? (covers(24 * INCH) ? up(mm, INCH) : up(mm, 12 * INCH));
    return unit === 'ft' ? feet(whole, 64) : fraction(whole, 64);
  }
  let step;
  if (covers(1)) step = up(mm, 0.1);
  else {
    const decade = 10 ** Math.floor(Math.log10(mm));
    step = covers(1.5 * decade) && !covers(decade) ? 1.5 * decade : up(mm, decade);
  }
  return decimal(step, 1).replace(/\.0$/, '') + (unit === 'mm' ? '' : ' mm');
}

// size writes a length with its give or take; give below 0 is one that is not known.
export function size(mm, give, unit) {
  if (give < 0) return length(mm, unit) + ', give or take not known';
  return length(mm, unit) + (give === 0 ? '' : ', give or take ' + giveOrTake(give, unit));
}
