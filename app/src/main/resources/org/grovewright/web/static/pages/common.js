// What the pages by question share: loading, figures that open their working, remarks, cautions.
import { h, replace } from '../dom.js';
import { icon } from '../icons.js';
import { language, momentText, t } from '../i18n.js';
import { openWorking } from './working.js';

/** Today on the reader's own clock, ISO 8601. */
export function today() {
  const now = new Date();
  const two = (n) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** The address of the pages of a site in the browser. */
export function sitePath(siteId) {
  return `/site/${encodeURIComponent(siteId)}`;
}

/** Asks for something of a site in the reader's language. */
export function ask(context, path, parameters = {}) {
  const query = new URLSearchParams({ ...parameters, lang: language() });
  return context.api.get(`/sites/${encodeURIComponent(context.siteId)}/${path}?${query}`);
}

/** Says when a page is shown from what was kept, because the server cannot be reached. */
export function keptNote(page) {
  return page.keptAt
    ? h('div', { class: 'note water', role: 'status' }, icon('info'), h('p', null, t('page.kept', momentText(page.keptAt))))
    : null;
}

/** A number; where it has a working, a button that opens it. */
export function figure(context, shown, { label, day = today() } = {}) {
  if (!shown || !shown.text) {
    return h('span', { class: 'quiet' }, '\u2013');
  }
  if (!shown.figure) {
    return h('span', null, shown.text);
  }
  return h(
    'button',
    {
      type: 'button',
      class: 'worked',
      title: t('figure.open'),
      'aria-label': t('figure.of', label ? `${label} ${shown.text}` : shown.text),
      dataset: { figure: shown.figure },
      onclick: () => openWorking(context, shown.figure, day),
    },
    shown.text,
  );
}

/** Remarks; those where the plan falls short stand out. */
export function remarks(list) {
  if (!list || list.length === 0) {
    return null;
  }
  return h(
    'ul',
    { class: 'remarks' },
    list.map((remark) =>
      h(
        'li',
        { class: remark.shortfall ? 'note bad' : 'note' },
        icon(remark.shortfall ? 'warning' : 'info'),
        h('p', null, remark.subject ? h('strong', null, `${remark.subject}: `) : null, remark.text),
      ),
    ),
  );
}

/** More than a few things alike are folded behind the first of them. */
export function folded(summary, content, { open = false } = {}) {
  return h('details', { open }, h('summary', null, summary), content);
}

/** Cautions, each once. */
export function cautions(list, { open = false } = {}) {
  if (!list || list.length === 0) {
    return null;
  }
  return h(
    'div',
    { class: 'cautions' },
    list.map((one) =>
      h(
        'details',
        { class: 'caution', open },
        h('summary', null, icon('warning'), h('span', null, t('page.caution', one.title))),
        h('p', null, one.text),
      ),
    ),
  );
}

/** A table that may be wider than a phone; it can be scrolled with the keyboard. */
export function table(caption, columns, rows) {
  return h(
    'div',
    { class: 'scroll', role: 'region', tabindex: '0', 'aria-label': caption },
    h(
      'table',
      null,
      h('caption', { class: 'hidden-text' }, caption),
      h('thead', null, h('tr', null, columns.map((c) => h('th', { scope: 'col', class: [c.number && 'number', c.wide && 'wide-only'].filter(Boolean).join(' ') || null }, c.title)))),
      h(
        'tbody',
        null,
        rows.map((row) =>
          h(
            'tr',
            { class: row.class ?? null },
            row.cells.map((cell, i) =>
              i === 0
                ? h('th', { scope: 'row' }, cell)
                : h('td', { class: [columns[i].number && 'number', columns[i].wide && 'wide-only'].filter(Boolean).join(' ') || null }, cell),
            ),
          ),
        ),
      ),
    ),
  );
}

/** Shows something for as long as it takes to load. */
export async function waiting(root, promise) {
  const note = h('p', { class: 'quiet waiting', role: 'status' }, t('page.making'));
  const timer = setTimeout(() => replace(root, h('div', { class: 'page' }, h('h1', null, t('page.wait')), note)), 400);
  try {
    return await promise;
  } finally {
    clearTimeout(timer);
  }
}
