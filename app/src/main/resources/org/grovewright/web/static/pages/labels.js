// Labels to print: a code on each opens the plant's page. They fit A4 and Letter alike.
import { h, replace, svg } from '../dom.js';
import { field } from '../forms.js';
import { icon } from '../icons.js';
import { count, language, t } from '../i18n.js';
import { sitePath, waiting } from './common.js';

const LOCAL = /^(localhost|127\.|\[::1\])/;

export async function show(root, context) {
  const sheet = h('ul', { class: 'labels' });
  const shown = h('p', { class: 'quiet no-print', role: 'status' });
  const note = h('div', { class: 'no-print' });
  const address = field({
    label: t('labels.address'),
    help: t('labels.address-help'),
    control: h('input', { type: 'url', value: location.origin, autocomplete: 'off', onchange: () => load() }),
  });
  const all = h('input', { type: 'checkbox', id: 'labels-all', onchange: () => draw() });
  let labels = [];

  async function load() {
    const query = new URLSearchParams({ address: address.control.value.trim(), lang: language() });
    try {
      labels = (await context.api.get(`/sites/${encodeURIComponent(context.siteId)}/labels?${query}`)).labels;
      address.problem('');
    } catch (problem) {
      address.problem(problem.status === 0 ? t('shell.unreachable') : problem.field === 'address' ? t('labels.bad-address') : problem.message);
      return;
    }
    draw();
  }

  function draw() {
    let host = '';
    try {
      host = new URL(address.control.value).host;
    } catch {
      // The server has said so beside the field.
    }
    replace(note, LOCAL.test(host) ? h('div', { class: 'note caution' }, icon('warning'), h('p', null, t('labels.local'))) : null);
    const wanted = labels.filter((label) => all.checked || label.role === 'main');
    shown.textContent = count('labels.count', wanted.length);
    replace(sheet, wanted.map(drawLabel));
  }

  function drawLabel(label) {
    const quiet = 4;
    const side = label.size + 2 * quiet;
    return h(
      'li',
      { class: 'label-card' },
      svg(
        'svg',
        { class: 'code', viewBox: `${-quiet} ${-quiet} ${side} ${side}`, role: 'img', 'aria-label': t('labels.code', label.plant), 'shape-rendering': 'crispEdges' },
        svg('rect', { class: 'code-ground', x: -quiet, y: -quiet, width: side, height: side }),
        svg('path', { class: 'code-ink', d: label.path }),
      ),
      h(
        'div',
        { class: 'label-text' },
        h('div', { class: label.plant.length > 12 ? 'label-id long' : 'label-id' }, label.plant),
        h('div', null, label.species),
        label.cultivar ? h('div', { class: 'label-small label-cultivar' }, label.cultivar) : null,
        h('div', { class: 'label-small', lang: 'la' }, label.latin),
        h('div', { class: 'label-small' }, label.planted),
      ),
    );
  }

  await waiting(root, load());
  replace(
    root,
    h(
      'div',
      { class: 'page labels-page' },
      h('div', { class: 'no-print' }, h('p', null, h('a', { href: `${sitePath(context.siteId)}/settings` }, t('labels.back'))), h('h1', null, t('labels.title')), h('p', null, t('labels.explain'))),
      note,
      h(
        'div',
        { class: 'no-print' },
        address,
        h('label', { class: 'check', for: 'labels-all' }, all, t('labels.all')),
        h('p', { class: 'row' }, h('button', { type: 'button', class: 'primary', onclick: () => window.print() }, icon('list'), t('page.print'))),
      ),
      shown,
      sheet,
    ),
  );
}
