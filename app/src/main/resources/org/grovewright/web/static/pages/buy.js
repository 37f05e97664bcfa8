// What do I buy? The list by shelf, to be ticked off in the shop and to be printed.
import { h, replace } from '../dom.js';
import { icon } from '../icons.js';
import { count, t } from '../i18n.js';
import { onTicks, settleTick, syncTicks, takeOverOld, tick, ticksOf } from '../garden/ticks.js';
import { ask, figure, folded, keptNote, remarks, waiting } from './common.js';

const LOOK_AGAIN_MS = 10_000;

export async function show(root, context) {
  const { siteId } = context;
  const page = await waiting(root, ask(context, 'pages/buy'));
  const readOnly = Boolean(context.site?.journalReadOnly);
  const items = page.shelves.flatMap((shelf) => shelf.items);
  const rows = new Map();
  const progress = h('p', { class: 'quiet', role: 'status' });
  const state = h('p', { class: 'sync-state no-print', role: 'status', hidden: true });
  const conflicts = h('div', { class: 'no-print', role: 'status' });
  let drawing = 0;

  function tell() {
    progress.textContent = t('buy.progress', items.filter((item) => rows.get(item.key).box.checked).length, items.length);
  }

  function mark({ box, row }, on) {
    box.checked = on;
    row.classList.toggle('bought', on);
  }

  async function change(item, on) {
    // Shown at once; what the server makes of it is drawn when it has answered.
    drawing += 1;
    mark(rows.get(item.key), on);
    tell();
    try {
      const outcome = await tick(siteId, item.key, on);
      if (outcome === 'forbidden') {
        context.say?.(t('buy.forbidden'));
      }
    } catch (problem) {
      console.error(problem);
      mark(rows.get(item.key), !on);
      tell();
      state.textContent = t('buy.not-kept');
      state.hidden = false;
    }
  }

  /** Draws the ticks as this device knows them. */
  async function drawTicks() {
    drawing += 1;
    const mine = drawing;
    const ticks = await ticksOf(siteId);
    if (mine !== drawing) {
      return;
    }
    for (const item of items) {
      const { about } = rows.get(item.key);
      const known = ticks.get(item.key);
      mark(rows.get(item.key), Boolean(known?.ticked));
      replace(
        about,
        known?.ticked && known.author ? h('span', { class: 'quiet small' }, t('buy.by', known.author)) : null,
        known?.change?.state === 'waiting' ? h('span', { class: 'tag warn' }, t('journal.not-sent')) : null,
        known?.change?.state === 'refused' ? h('span', { class: 'tag warn' }, t('journal.refused', known.change.why)) : null,
      );
    }
    tell();
    const unsent = [...ticks.values()].filter((one) => one.change?.state === 'waiting').length;
    state.textContent = unsent ? count('buy.waiting', unsent) : '';
    state.hidden = unsent === 0;
    replace(conflicts, items.filter((item) => ticks.get(item.key)?.change?.state === 'conflict').map((item) => conflict(item, ticks.get(item.key))));
  }

  function conflict(item, { ticked, change }) {
    const word = (on) => t(on ? 'buy.said-bought' : 'buy.said-open');
    return h(
      'div',
      { class: 'note caution tick-conflict', dataset: { item: item.key } },
      icon('warning'),
      h(
        'div',
        null,
        h('p', null, t(change.kept ? 'buy.conflict-kept' : 'buy.conflict-other', item.name, change.other.author, word(change.other.ticked), word(ticked))),
        h('button', { type: 'button', 'aria-label': t('buy.conflict-seen-of', item.name), onclick: () => settleTick(siteId, item.key) }, t('buy.conflict-seen')),
      ),
    );
  }

  function drawItem(item) {
    const box = h('input', {
      type: 'checkbox',
      disabled: readOnly,
      'aria-label': t('buy.tick', item.name),
      onchange: (event) => change(item, event.target.checked),
    });
    const about = h('div', { class: 'item-tick no-print' });
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
        about,
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
    rows.set(item.key, { box, row, about });
    return row;
  }

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
      state,
      conflicts,
      page.shelves.map((shelf) =>
        h(
          'section',
          { class: 'shelf' },
          h('h2', null, t(`buy.shelf.${shelf.key}`), h('span', { class: 'quiet small' }, ` ${count('buy.items', shelf.items.length)}`)),
          h('ul', { class: 'items' }, shelf.items.map(drawItem)),
        ),
      ),
      page.remarks.length ? [h('h2', null, t('page.remarks')), remarks(page.remarks)] : null,
      h('p', { class: 'quiet no-print' }, t(readOnly ? 'buy.ticks-read' : 'buy.ticks-shared')),
    ),
  );
  tell();
  const draw = () => drawTicks().catch((problem) => console.error(problem));
  const look = () => {
    if (document.visibilityState === 'visible') {
      syncTicks(siteId);
    }
  };
  // The list can be read while the device still looks for its ticks, and without any.
  const old = readOnly ? Promise.resolve() : takeOverOld(siteId).catch((problem) => console.error(problem));
  old.then(draw).then(look);
  const ended = onTicks(draw);
  const timer = setInterval(look, LOOK_AGAIN_MS);
  document.addEventListener('visibilitychange', look);
  return () => {
    ended();
    clearInterval(timer);
    document.removeEventListener('visibilitychange', look);
  };
}
