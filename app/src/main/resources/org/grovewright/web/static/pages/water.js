// How long do I run the water? What each zone's timer is set to, this month and through the years.
import { h, replace } from '../dom.js';
import { icon } from '../icons.js';
import { count, t } from '../i18n.js';
import { ask, figure, folded, keptNote, remarks, table, today, waiting } from './common.js';

export async function show(root, context) {
  const page = await waiting(root, ask(context, 'pages/water', { date: today() }));
  // Before the plan begins there is no month of it to point at.
  let year = page.year || 1;
  const zones = h('div', { class: 'zones' });
  const years = h('div', { class: 'row no-print', role: 'group', 'aria-label': t('water.choose-year') });

  function capital(text) {
    return text.charAt(0).toUpperCase() + text.slice(1);
  }

  function drawZone(zone) {
    const card = zone.years.find((one) => one.year === year);
    const most = Math.max(1, ...zone.years.flatMap((one) => one.months.map((month) => month.perWeek)));
    const now = year === page.year ? card.months.find((month) => month.month === page.month) : undefined;
    return h(
      'section',
      { class: 'card zone' },
      h('h2', null, capital(zone.name), h('span', { class: 'quiet small' }, ` ${count('water.plants', zone.plants)}`)),
      now
        ? h(
            'div',
            { class: 'note water now' },
            icon('water'),
            h(
              'div',
              null,
              h('div', { class: 'quiet' }, t('water.this-month', now.name)),
              now.off
                ? h('strong', null, t('water.stays-off'))
                : [
                    h('strong', { class: 'big' }, figure(context, now.minutes, { label: t('water.minutes-title') })),
                    ' ',
                    figure(context, now.every, { label: t('water.every-title') }),
                    h('div', null, t('today.starts', now.starts)),
                  ],
            ),
          )
        : null,
      h(
        'dl',
        { class: 'facts' },
        h('div', null, h('dt', null, t('water.flow')), h('dd', null, figure(context, zone.flow, { label: t('water.flow') }))),
        h('div', null, h('dt', null, t('water.evenness')), h('dd', null, figure(context, zone.uniformity, { label: t('water.evenness') }))),
      ),
      h('h3', null, card.title),
      table(
        `${zone.name}, ${card.title}`,
        [
          { title: t('water.month') },
          { title: t('water.minutes-title'), number: true },
          { title: t('water.every-title') },
          { title: t('water.per-week'), wide: true },
        ],
        card.months.map((month) => ({
          class: now && month.month === now.month ? 'now-row' : null,
          cells: [
            month.name,
            figure(context, month.minutes, { label: month.name }),
            [figure(context, month.every, { label: month.name }), month.starts ? h('div', { class: 'quiet' }, t('water.at', month.starts)) : null],
            bar(month.perWeek, most),
          ],
        })),
      ),
      folded(
        t('water.shortest'),
        table(
          t('water.shortest'),
          [{ title: t('water.month') }, { title: t('water.plant') }, { title: t('water.needs'), number: true }, { title: t('water.gets'), number: true }],
          card.months
            .filter((month) => month.shortest)
            .map((month) => ({
              cells: [
                month.name,
                month.shortest,
                figure(context, month.needs, { label: t('water.needs') }),
                figure(context, month.gets, { label: t('water.gets') }),
              ],
            })),
        ),
      ),
    );
  }

  function bar(value, most) {
    return h(
      'span',
      { class: 'bar' },
      h('span', { class: 'bar-fill', style: { width: `${Math.round((70 * value) / most)}%` } }),
      h('span', { class: 'bar-text' }, t('water.minutes', value)),
    );
  }

  function draw() {
    replace(
      years,
      page.zones[0]?.years.map((card) =>
        h(
          'button',
          {
            type: 'button',
            'aria-pressed': String(card.year === year),
            onclick: () => {
              year = card.year;
              draw();
              years.querySelector('[aria-pressed="true"]').focus();
            },
          },
          t('water.year-short', card.year),
        ),
      ),
    );
    replace(zones, page.zones.map(drawZone));
  }

  draw();
  const shortfalls = page.remarks.filter((remark) => remark.shortfall);
  const notes = page.remarks.filter((remark) => !remark.shortfall);
  replace(
    root,
    h(
      'div',
      { class: 'page water-page' },
      h('h1', null, t('water.title')),
      keptNote(page),
      h('p', null, t('water.explain')),
      h(
        'div',
        { class: 'row no-print' },
        years,
        h('button', { type: 'button', onclick: () => window.print() }, icon('list'), t('page.print')),
      ),
      remarks(shortfalls),
      page.zones.length ? zones : h('p', { class: 'note' }, t('water.none')),
      notes.length ? folded(count('page.more-remarks', notes.length), remarks(notes)) : null,
    ),
  );
}
