// Lengths between metres, in which the site is kept, and what the owner reads and types.
import { numberOf } from '../forms.js';

const FOOT = 0.3048;

/** Lengths of one reader: metric or us. */
export function lengthsOf(units, language) {
  const us = units === 'us';
  const size = us ? FOOT : 1;
  const unit = us ? 'ft' : 'm';
  const format = new Intl.NumberFormat(language, { maximumFractionDigits: us ? 1 : 2 });
  return {
    us,
    unit,
    /** Metres of one unit. */
    size,
    /** As shown: 3.2 m. */
    text: (metres) => `${format.format(metres / size)}\u00a0${unit}`,
    area: (squareMetres) => `${format.format(Math.round((squareMetres / size / size) * 10) / 10)}\u00a0${unit}²`,
    /** As typed into a field: 3.2. */
    field: (metres) => String(Math.round((metres / size) * 100) / 100),
    /** Metres of what was typed; NaN if it is no number. */
    metres: (text) => numberOf(text) * size,
    /** As written into the description: 3.2 m. */
    written: (metres) => `${Math.round((metres / size) * 100) / 100} ${unit}`,
  };
}

/** A place as written into the description. */
export function writtenPlace(lengths, [x, y]) {
  return [lengths.written(x), lengths.written(y)];
}
