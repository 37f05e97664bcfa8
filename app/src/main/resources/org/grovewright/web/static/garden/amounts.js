// Numbers of the journal: which an entry carries, in which units they are typed and shown.
import { numberText, t } from '../i18n.js';

/** Units by sort of number, SI value of one, and whether they are metric. */
const UNITS = {
  'run-time': [{ unit: 'min', factor: 60 }, { unit: 'h', factor: 3600 }],
  'water-volume': [{ unit: 'L', factor: 1e-3, metric: true }, { unit: 'gal', factor: 3.785411784e-3, metric: false }],
  'water-depth': [{ unit: 'mm', factor: 1e-3, metric: true }, { unit: 'in', factor: 0.0254, metric: false }],
  mass: [
    { unit: 'g', factor: 1e-3, metric: true },
    { unit: 'kg', factor: 1, metric: true },
    { unit: 'oz', factor: 0.45359237 / 16, metric: false },
    { unit: 'lb', factor: 0.45359237, metric: false },
  ],
  length: [
    { unit: 'm', factor: 1, metric: true },
    { unit: 'cm', factor: 0.01, metric: true },
    { unit: 'ft', factor: 0.3048, metric: false },
    { unit: 'in', factor: 0.0254, metric: false },
  ],
};

/** Kinds of entries by what they are about, and the sorts of number each may carry. */
export const KINDS = {
  watered: { about: ['site', 'plant', 'row', 'zone'], amounts: ['run-time', 'water-volume'] },
  fed: { about: ['site', 'plant', 'row'], amounts: ['mass'] },
  inspected: { about: ['site', 'plant', 'row', 'zone'], amounts: [] },
  'measured-spread': { about: ['plant'], amounts: ['length'], needed: true },
  'measured-height': { about: ['plant'], amounts: ['length'], needed: true },
  rain: { about: ['site'], amounts: ['water-depth'], needed: true },
  loss: { about: ['plant'], amounts: [] },
  replaced: { about: ['plant'], amounts: [] },
  note: { about: ['site', 'plant', 'row', 'zone'], amounts: [], noted: true },
};

/** Units in which a kind's number may be typed, the reader's own first. */
export function unitsOf(kind, metric) {
  const own = (one) => (one.metric === undefined || one.metric === metric ? 0 : 1);
  return KINDS[kind].amounts.flatMap((sort) => UNITS[sort]).sort((a, b) => own(a) - own(b));
}

/** A number in the reader's units: as typed before the server knows it, else from its SI value. */
export function amountText(amount, metric) {
  if (!amount) {
    return '';
  }
  if (typeof amount === 'string') {
    return amount.replace(/^[\d.]+/, (number) => numberText(Number(number), 3));
  }
  const units = UNITS[amount.kind];
  if (!units) {
    return amount.kind === 'count' ? numberText(amount.value, 2) : amount.text ?? '';
  }
  const own = units.filter((one) => one.metric === undefined || one.metric === metric);
  const best = own.find((one) => amount.value / one.factor >= 1 && amount.value / one.factor < 1000) ?? own[0];
  return `${numberText(amount.value / best.factor, 2)}\u00a0${best.unit}`;
}

/** What a kind of entry is called. */
export function kindText(kind) {
  return t(`journal.kind.${kind}`);
}
