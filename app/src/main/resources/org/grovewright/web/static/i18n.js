// Texts of the pages in the language of the one who reads them.

const FALLBACK = 'en';
let texts = {};
let current = FALLBACK;

/** Loads the texts of a language; without a choice, that of the browser. */
export async function load(wanted) {
  const language = (wanted || navigator.language || FALLBACK).slice(0, 2).toLowerCase();
  for (const candidate of [language, FALLBACK]) {
    const response = await fetch(`/api/texts/${encodeURIComponent(candidate)}`);
    if (response.ok) {
      texts = await response.json();
      current = candidate;
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
