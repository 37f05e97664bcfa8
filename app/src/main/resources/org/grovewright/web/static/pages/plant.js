// One plant: what it needs and gets, how it is planted, fed and spaced, and its journal.
import { h, replace } from '../dom.js';
import { icon } from '../icons.js';
import { t } from '../i18n.js';
import { journal } from '../garden/journal.js';
import { ask, cautions, figure, folded, keptNote, remarks, sitePath, table, today, waiting } from './common.js';

export async function show(root, context) {
  const id = context.params.plantId;
  const page = await waiting(root, ask(context, `pages/plant/${encodeURIComponent(id)}`, { date: today() }));
  const base = sitePath(context.siteId);
  const { plant } = page;
  const month = new Date().getMonth() + 1;

  const facts = (list) =>
    h(
      'dl',
      { class: 'facts' },
      list.map((fact) => h('div', null, h('dt', null, fact.label), h('dd', null, figure(context, fact.value, { label: fact.label })))),
    );

  replace(
    root,
    h(
      'div',
      { class: 'page narrow plant-page' },
      h('p', { class: 'row no-print' }, h('a', { href: `${base}/plants` }, t('plant.all'))),
      h('h1', null, `${plant.id}: ${plant.species}`),
      keptNote(page),
      h(
        'p',
        null,
        h('em', { lang: 'la' }, page.latin),
        plant.cultivar ? `, ${plant.cultivar}` : null,
        '. ',
        t(plant.standing ? 'plants.planted' : 'plants.to-plant', plant.planted),
        '. ',
        page.row ? `${t('plants.row', page.row)}. ` : null,
        plant.zone ? `${plant.zone.charAt(0).toUpperCase()}${plant.zone.slice(1)}.` : t('plant.by-hand'),
      ),
      remarks(page.remarks.filter((remark) => remark.shortfall)),
      cautions(page.cautions),
      h('section', { class: 'card' }, h('h2', null, t('journal.title')), journal(context, { subjectKind: 'plant', subject: plant.id })),
      h(
        'section',
        { class: 'card' },
        h('h2', null, t('plant.water')),
        h('p', { class: 'quiet' }, page.waterYear),
        table(
          t('plant.water'),
          [
            { title: t('water.month') },
            { title: t('water.needs'), number: true },
            { title: t('water.gets'), number: true },
            { title: t('plant.share'), number: true },
          ],
          page.water.map((one) => ({
            class: one.month === month ? 'now-row' : null,
            cells: [
              one.name,
              figure(context, one.needs, { label: `${one.name} ${t('water.needs')}` }),
              figure(context, one.gets, { label: `${one.name} ${t('water.gets')}` }),
              one.met || '\u2013',
            ],
          })),
        ),
      ),
      h(
        'section',
        { class: 'card' },
        h('h2', null, t('plant.emitters')),
        page.emitters.length
          ? h(
              'ul',
              { class: 'plain-list' },
              page.emitters.map((emitter) =>
                h(
                  'li',
                  null,
                  emitter.name,
                  ': ',
                  figure(context, emitter.flow, { label: emitter.name }),
                  ` ${t('plant.at')} `,
                  figure(context, emitter.pressure, { label: emitter.name }),
                ),
              ),
            )
          : h('p', null, t('plant.by-hand')),
      ),
      h(
        'section',
        { class: 'card' },
        h('h2', null, t('plant.feeding')),
        page.feedings.length
          ? h(
              'ul',
              { class: 'plain-list' },
              page.feedings.map((feeding) =>
                h('li', null, `${feeding.month}: `, figure(context, feeding.amount, { label: feeding.month }), ` ${feeding.fertiliser}`),
              ),
            )
          : h('p', null, t('plant.no-feeding')),
      ),
      h('section', { class: 'card' }, h('h2', null, t('plant.size')), facts(page.size)),
      page.ground.length ? h('section', { class: 'card' }, h('h2', null, t('plant.ground')), facts(page.ground)) : null,
      page.remarks.some((remark) => !remark.shortfall)
        ? folded(t('page.remarks'), remarks(page.remarks.filter((remark) => !remark.shortfall)))
        : null,
      h(
        'nav',
        { class: 'row no-print', 'aria-label': t('plant.others') },
        page.before ? h('a', { class: 'button', href: `${base}/plant/${encodeURIComponent(page.before)}` }, icon('back'), page.before) : null,
        page.next ? h('a', { class: 'button', href: `${base}/plant/${encodeURIComponent(page.next)}` }, page.next, icon('next')) : null,
      ),
    ),
  );
}
