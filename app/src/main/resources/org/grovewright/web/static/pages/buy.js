// What do I buy? The list by shelf, to be ticked off in the shop and to be printed.
import { h, replace } from '../dom.js';
import { icon } from '../icons.js';
import { count, t } from '../i18n.js';
import { ask, figure, folded, keptNote, remarks, waiting } from './common.js';

const storeKey = (siteId) => `bought:${siteId}`;

function ticked(siteId) {
  try {
    return new Set(JSON.parse(localStorage.getItem(storeKey(siteId)) ?? '[]'));
  } catch {
    return new Set();
  }
}

export async function show(root, context) {
  const page = await waiting(root, ask(context, 'pages/buy'));
  const done = ticked(context.siteId);
  const items = page.shelves.flatMap((shelf) => shelf.items);
  const progress = h('p', { class: 'quiet', role: 'status' });

  function tell() {
    progress.textContent = t('buy.progress', items.filter((item) => done.has(item.key)).length, items.length);
  }

  function tick(item, on, row) {
    if (on) {
      done.add(item.key);
    } else {
      done.delete(item.key);
    }
    localStorage.setItem(storeKey(context.siteId), JSON.stringify([...done]));
    row.classList.toggle('bought', on);
    tell();
  }

  function drawItem(item) {
    const box = h('input', {
      type: 'checkbox',
      checked: done.has(item.key),
      'aria-label': t('buy.tick', item.name),
      onchange: (event) => tick(item, event.target.checked, row),
    });
    const row = h(
      'li',
      { class: 'item', dataset: { item: item.key } },
      box,
      h(
        'div',
        { class: 'item-body' },
        h('div', { class: 'item-name' }, item.name),
        h(
          'div',
          { class: 'item-line' },
          figure(context, item.packs, { label: t('buy.packs') }),
          item.pack ? h('span', { class: 'quiet' }, ` ${t('buy.of', item.pack)}`) : null,
        ),
        h(
          'div',
          { class: 'item-cost' },
          item.cost.text
            ? [item.guess ? h('span', { title: t('buy.guess-title') }, '\u2248\u00a0') : null, figure(context, item.cost, { label: t('buy.cost') })]
            : h('span', { class: 'quiet' }, t('buy.no-price')),
        ),
        folded(t('buy.more'), [
          h(
            'dl',
            { class: 'facts' },
            h('div', null, h('dt', null, t('buy.needed')), h('dd', null, figure(context, item.needed, { label: t('buy.needed') }))),
            h('div', null, h('dt', null, t('buy.with-waste')), h('dd', null, figure(context, item.withWaste, { label: t('buy.with-waste') }))),
            item.onHand ? h('div', null, h('dt', null, t('buy.on-hand')), h('dd', null, item.onHand)) : null,
            h('div', null, h('dt', null, t('buy.left-over')), h('dd', null, figure(context, item.leftOver, { label: t('buy.left-over') }))),
            h('div', null, h('dt', null, t('buy.for')), h('dd', null, item.uses.join('; '))),
          ),
          item.cuts.length
            ? [
                h('h3', null, t('buy.cutting')),
                h(
                  'ol',
                  { class: 'cuts' },
                  item.cuts.map((coil) =>
                    h(
                      'li',
                      null,
                      h('strong', null, `${coil.title}, ${coil.length}`),
                      coil.pieces.length ? h('ul', null, coil.pieces.map((piece) => h('li', null, piece))) : null,
                      h('span', { class: 'quiet' }, t('buy.cut-left', coil.left)),
                    ),
                  ),
                ),
              ]
            : null,
        ]),
      ),
    );
    row.classList.toggle('bought', done.has(item.key));
    return row;
  }

  tell();
  replace(
    root,
    h(
      'div',
      { class: 'page buy' },
      h('h1', null, t('buy.title')),
      keptNote(page),
      h(
        'p',
        { class: 'lead' },
        t(page.complete ? 'buy.total' : 'buy.total-part'),
        ' ',
        figure(context, page.total, { label: t('buy.cost') }),
        '. ',
        page.guessed ? t('buy.guessed') : '',
      ),
      h('p', null, t('buy.explain')),
      h(
        'div',
        { class: 'row no-print' },
        h('button', { type: 'button', onclick: () => window.print() }, icon('list'), t('page.print')),
        h('a', { class: 'button', href: `/api/sites/${encodeURIComponent(context.siteId)}/export/shopping.csv`, download: '' }, t('buy.csv')),
        progress,
      ),
      page.shelves.map((shelf) =>
        h(
          'section',
          { class: 'shelf' },
          h('h2', null, t(`buy.shelf.${shelf.key}`), h('span', { class: 'quiet small' }, ` ${count('buy.items', shelf.items.length)}`)),
          h('ul', { class: 'items' }, shelf.items.map(drawItem)),
        ),
      ),
      page.remarks.length ? [h('h2', null, t('page.remarks')), remarks(page.remarks)] : null,
      h('p', { class: 'quiet no-print' }, t('buy.ticks-here')),
    ),
  );
}
