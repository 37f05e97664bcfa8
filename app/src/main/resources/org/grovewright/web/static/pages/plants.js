// How is each plant doing? All plants by row, to be found by name.
import { h, replace } from '../dom.js';
import { icon } from '../icons.js';
import { count, t } from '../i18n.js';
import { keepForGarden } from '../offline.js';
import { ask, figure, keptNote, sitePath, today, waiting } from './common.js';

export async function show(root, context) {
  const page = await waiting(root, ask(context, 'pages/plants', { date: today() }));
  const list = h('div', { class: 'plant-groups' });
  const found = h('p', { class: 'quiet', role: 'status' });
  const search = h('input', { type: 'search', id: 'plant-search', autocomplete: 'off', oninput: () => draw() });
  const companions = h('input', { type: 'checkbox', id: 'plant-companions', onchange: () => draw() });

  function draw() {
    const wanted = search.value.trim().toLocaleLowerCase();
    let shown = 0;
    replace(
      list,
      page.groups.map((group) => {
        const plants = group.plants.filter(
          (plant) =>
            (companions.checked || wanted || plant.role === 'main') &&
            [plant.id, plant.species, plant.cultivar, plant.zone].join(' ').toLocaleLowerCase().includes(wanted),
        );
        shown += plants.length;
        return plants.length === 0
          ? null
          : h(
              'section',
              null,
              h('h2', null, group.row ? t('plants.row', group.row) : t('plants.no-row')),
              h('ul', { class: 'plant-list' }, plants.map(drawPlant)),
            );
      }),
    );
    found.textContent = count('plants.shown', shown);
  }

  function drawPlant(plant) {
    return h(
      'li',
      null,
      h(
        'a',
        { href: `${sitePath(context.siteId)}/plant/${encodeURIComponent(plant.id)}` },
        h('strong', null, plant.id),
        h('span', null, plant.species, plant.cultivar ? h('span', { class: 'quiet' }, ` ${plant.cultivar}`) : null),
        icon('next'),
      ),
      h(
        'div',
        { class: 'plant-line' },
        h('span', { class: 'quiet' }, t(plant.standing ? 'plants.planted' : 'plants.to-plant', plant.planted)),
        h('span', null, t('plants.needs'), ' ', figure(context, plant.needs, { label: `${plant.id} ${t('plants.needs')}` })),
        plant.zone ? h('span', { class: 'tag' }, plant.zone) : h('span', { class: 'tag warn' }, t('plants.by-hand')),
        plant.shortfalls ? h('span', { class: 'tag warn' }, count('plants.shortfalls', plant.shortfalls)) : null,
        plant.notes ? h('span', { class: 'tag' }, count('plants.notes', plant.notes)) : null,
      ),
    );
  }

  draw();
  replace(
    root,
    h(
      'div',
      { class: 'page plants-page' },
      h('h1', null, t('plants.title')),
      keptNote(page),
      h('p', null, t('plants.explain', page.mains, page.others)),
      h(
        'form',
        { class: 'search no-print', role: 'search', onsubmit: (event) => event.preventDefault() },
        h('label', { class: 'label', for: 'plant-search' }, t('plants.search')),
        search,
        h('label', { class: 'check', for: 'plant-companions' }, companions, t('plants.with-companions')),
      ),
      h('p', { class: 'no-print' }, h('a', { class: 'button', href: `${sitePath(context.siteId)}/labels` }, t('settings.labels'))),
      found,
      list,
    ),
  );
  const plants = page.groups.flatMap((group) => group.plants).sort((a, b) => Number(b.role === 'main') - Number(a.role === 'main'));
  keepForGarden(context.site, [
    () => ask(context, 'pages/plants', { date: today() }),
    () => ask(context, 'pages/today', { date: today() }),
    () => ask(context, 'pages/water', { date: today() }),
    ...plants.map((plant) => () => ask(context, `pages/plant/${encodeURIComponent(plant.id)}`, { date: today() })),
  ]).catch((problem) => console.error(problem));
}
