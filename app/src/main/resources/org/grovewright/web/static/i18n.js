// Texts of the pages in the language of the one who reads them.

const FALLBACK = 'en';
let texts = {};
let current = FALLBACK;
let plural = new Intl.PluralRules(FALLBACK);

/** Loads the texts of a language; without a choice, that of the browser. */
export async function load(wanted) {
  const language = (wanted || navigator.language || FALLBACK).slice(0, 2).toLowerCase();
  for (const candidate of [language, FALLBACK]) {
    let response;
    try {
      response = await fetch(`/api/texts/${encodeURIComponent(candidate)}`);
    } catch {
      // Without the server and without a kept copy the texts of before have to do.
      continue;
    }
    if (response.ok) {
      texts = await response.json();
      current = candidate;
      plural = new Intl.PluralRules(candidate);
      return;
    }
  }
}

/** The language of the texts, as in `lang`. */
export function language() {
  return current;
}

/** The text of a key, with {0}, {1} ... replaced. */
export function t(key, ...args) {
  const text = texts[key] ?? key;
  return text.replace(/\{(\d+)\}/g, (whole, index) => (index in args ? String(args[index]) : whole));
}

/** The text of a key for a count, which is {0}: `key.one`, `key.other` or another form. */
export function count(key, number, ...args) {
  const form = `${key}.${plural.select(number)}`;
  return t(form in texts ? form : `${key}.other`, number, ...args);
}

/** A day in words; ISO 8601 in. */
export function dayText(iso) {
  const [year, month, day] = iso.split('-').map(Number);
  return new Intl.DateTimeFormat(current, { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' }).format(
    new Date(year, month - 1, day),
  );
}

/** A moment in words; ISO 8601 in. */
export function momentText(iso) {
  return new Intl.DateTimeFormat(current, { dateStyle: 'medium', timeStyle: 'short' }).format(new Date(iso));
}

/** A number in this language. */
export function numberText(value, digits) {
  return new Intl.NumberFormat(current, { maximumFractionDigits: digits }).format(value);
}
