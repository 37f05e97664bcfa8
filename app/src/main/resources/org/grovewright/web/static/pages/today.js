// What do I do today, and this weekend? Phone first.
import { h, replace } from '../dom.js';
import { icon } from '../icons.js';
import { count, t } from '../i18n.js';
import { journal } from '../garden/journal.js';
import { keepForGarden } from '../offline.js';
import { ask, cautions, figure, folded, keptNote, remarks, sitePath, today, waiting } from './common.js';

export async function show(root, context) {
  const day = /^\d{4}-\d{2}-\d{2}$/.test(context.query.get('date') ?? '') ? context.query.get('date') : today();
  const page = await waiting(root, ask(context, 'pages/today', { date: day }));
  const [first, ...rest] = page.days;
  const weekend = rest.filter((one) => one.weekend);
  const others = rest.filter((one) => !one.weekend && hasWork(one));

  const timers = (list) =>
    h(
      'ul',
      { class: 'timers' },
      list.map((zone) =>
        h(
          'li',
          { class: 'note water' },
          icon('water'),
          h(
            'div',
            null,
            h('strong', null, capital(zone.name)),
            ': ',
            figure(context, zone.every, { label: zone.name }),
            zone.minutes.text ? [', ', figure(context, zone.minutes, { label: zone.name })] : null,
            zone.starts ? h('div', { class: 'quiet' }, t('today.starts', zone.starts)) : null,
          ),
        ),
      ),
    );

  const advice = (one) => [
    h('h3', null, t('advice.title')),
    h(
      'ul',
      { class: 'timers advice' },
      one.zones.map((zone) =>
        h(
          'li',
          { class: zone.action === 'water' ? 'note water' : zone.action === 'wait' ? 'note caution' : 'note', dataset: { action: zone.action } },
          icon(zone.action === 'water' ? 'water' : 'info'),
          h(
            'div',
            null,
            h('strong', null, capital(zone.text)),
            zone.more ? h('div', { class: 'quiet' }, zone.more) : null,
            zone.numbers.length
              ? folded(
                  t('advice.numbers'),
                  h(
                    'dl',
                    { class: 'facts' },
                    zone.numbers.map((one) =>
                      h('div', null, h('dt', null, capital(one.label)), h('dd', null, figure(context, one.value, { label: one.label, day }))),
                    ),
                  ),
                )
              : null,
          ),
        ),
      ),
    ),
    one.lookAt.length
      ? [
          h('h3', null, t('advice.look')),
          h(
            'ul',
            { class: 'plain-list' },
            one.lookAt.map((look) =>
              h('li', null, h('a', { href: `${sitePath(context.siteId)}/plant/${encodeURIComponent(look.plant)}` }, look.plant), `: ${look.text} (`, figure(context, look.amount.value, { label: look.amount.label, day }), ')'),
            ),
          ),
        ]
      : null,
    one.remarks.length ? folded(t('advice.assumed'), remarks(one.remarks)) : null,
    h('h3', null, t('today.timer-card')),
  ];

  const jobs = (one) =>
    h(
      'ul',
      { class: 'jobs' },
      one.jobs.map((job) =>
        h(
          'li',
          { class: 'job' },
          h('span', { class: 'time' }, `${job.from}\u2013${job.to}`),
          h(
            'div',
            null,
            h('strong', null, job.name),
            job.place ? `, ${job.place}` : null,
            h(
              'div',
              { class: 'quiet' },
              [job.people, job.part].filter(Boolean).join(', '),
              ' · ',
              t('today.work'),
              ' ',
              figure(context, job.work, { label: job.name }),
            ),
          ),
        ),
      ),
      one.care.map((care) =>
        h('li', { class: 'job care' }, icon('check'), h('div', null, h('strong', null, care.title), h('div', null, care.text))),
      ),
    );

  const dayBlock = (one, level = 'h3') => [
    h(level, null, capital(one.title)),
    hasWork(one) ? jobs(one) : h('p', { class: 'quiet' }, t('today.nothing')),
    one.cautions.length ? cautions(one.cautions, { open: level === 'h2' }) : null,
  ];

  replace(
    root,
    h(
      'div',
      { class: 'page narrow today' },
      h('h1', null, t('today.title')),
      h(
        'form',
        { class: 'row no-print day-form', onsubmit: (event) => event.preventDefault() },
        h('label', { class: 'label', for: 'today-date' }, t('today.day')),
        h('input', {
          id: 'today-date',
          type: 'date',
          value: day,
          onchange: (event) => {
            if (event.target.value) {
              context.navigate(`${location.pathname}?date=${event.target.value}`);
            }
          },
        }),
      ),
      keptNote(page),
      h('section', { class: 'card day-card' }, dayBlock(first, 'h2')),
      h(
        'section',
        { class: 'card' },
        h('h2', null, t('today.water')),
        page.advice.zones.length ? advice(page.advice) : null,
        page.wateringFrom
          ? h('p', null, t('today.water-from', page.wateringFrom))
          : first.waterings.length
            ? [h('p', null, count('today.waters', first.waterings.length)), timers(first.waterings)]
            : [h('p', null, t('today.no-water')), page.timer.length ? folded(t('today.timer'), timers(page.timer)) : null],
        h('p', { class: 'quiet' }, t('today.rain-hint')),
      ),
      weekend.length
        ? h('section', { class: 'card' }, h('h2', null, t('today.weekend')), weekend.map((one) => dayBlock(one)))
        : null,
      others.length
        ? h('section', { class: 'card' }, h('h2', null, t('today.coming')), others.map((one) => dayBlock(one)))
        : null,
      page.nextWork ? h('p', null, t('today.next', page.nextWork)) : null,
      page.finish ? h('p', { class: 'quiet' }, t('today.finish', page.finish)) : null,
      page.lately.length
        ? folded(
            count('today.lately', page.lately.length),
            h('ul', { class: 'jobs' }, page.lately.map((care) => h('li', { class: 'job care' }, icon('check'), h('div', null, h('strong', null, care.title), h('div', { class: 'quiet' }, care.day), h('div', null, care.text))))),
          )
        : null,
      h('section', { class: 'card no-print' }, h('h2', null, t('journal.title')), journal(context, { subjectKind: 'site', subject: '', zones: page.timer.map(({ zone, name }) => ({ id: zone, name: capital(name) })) })),
    ),
  );
  keep(context);
}

function keep(context) {
  keepForGarden(context.site, ['today', 'plants', 'water', 'buy'].map((name) => () => ask(context, `pages/${name}`, { date: today() }))).catch(
    (problem) => console.error(problem),
  );
}

function hasWork(one) {
  return one.jobs.length + one.care.length > 0;
}

function capital(text) {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
