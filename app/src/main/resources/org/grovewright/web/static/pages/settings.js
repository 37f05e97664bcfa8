// Settings: how to read, what the plan says of itself, taking it along, sharing, and its history.
import { h, replace } from '../dom.js';
import { choices, field, problemBeside } from '../forms.js';
import { icon } from '../icons.js';
import { count, language, momentText, t } from '../i18n.js';
import { hasPhoto } from '../map/photo.js';
import { canWorkAlone } from '../offline.js';
import { drawAccounts, ownAccount } from './accounts.js';
import { ask, figure, folded, keptNote, remarks, sitePath, waiting } from './common.js';

const EXPORTS = ['report.pdf', 'report.html', 'map.pdf', 'map.svg', 'shopping.csv', 'watering.csv', 'calendar.ics', 'site.geojson', 'site.gpx', 'description.yaml'];

export async function show(root, context) {
  const base = `/sites/${encodeURIComponent(context.siteId)}`;
  const page = await waiting(root, ask(context, 'pages/summary'));
  const settings = context.me?.settings ?? {};
  const owner = context.site?.role === 'owner';

  async function set(change, note) {
    try {
      await context.api.put('/me/settings', change);
      // The texts, units and colours of this very page change with it.
      await context.reload();
      document.querySelector(`[name="${Object.keys(change)[0]}"]:checked`)?.focus();
    } catch (problem) {
      replace(note, problemNote(problem));
      note.scrollIntoView({ block: 'nearest' });
    }
  }

  const readingNote = h('div', { role: 'alert' });
  const languages = context.me?.languages ?? ['en', 'es'];
  const reading = h(
    'section',
    { class: 'card no-print' },
    h('h2', null, t('settings.reading')),
    readingNote,
    choices({
      legend: t('settings.language'),
      name: 'language',
      value: settings.language ?? language(),
      choices: languages.map((one) => ({ value: one, label: t(`language.${one}`) })),
      onchange: (value) => set({ language: value }, readingNote),
    }),
    choices({
      legend: t('settings.units'),
      name: 'units',
      value: settings.units ?? page.units,
      choices: ['metric', 'us'].map((one) => ({ value: one, label: t(`settings.units.${one}`), help: t(`settings.units.${one}.help`) })),
      onchange: (value) => set({ units: value }, readingNote),
    }),
    choices({
      legend: t('settings.theme'),
      name: 'theme',
      value: settings.theme ?? 'system',
      choices: ['system', 'light', 'dark'].map((one) => ({ value: one, label: t(`settings.theme.${one}`) })),
      onchange: (value) => set({ theme: value }, readingNote),
    }),
  );

  const plan = h(
    'section',
    { class: 'card' },
    h('h2', null, t('settings.plan')),
    h(
      'dl',
      { class: 'facts' },
      h('div', null, h('dt', null, t('settings.start')), h('dd', null, page.start)),
      page.facts.map((fact) => h('div', null, h('dt', null, fact.label), h('dd', null, figure(context, fact.value, { label: fact.label })))),
    ),
    page.shortfalls.length
      ? [h('h3', null, t('settings.shortfalls')), remarks(page.shortfalls)]
      : h('p', { class: 'note good' }, icon('check'), h('span', null, t('settings.meets'))),
    page.assumed.length ? folded(count('settings.assumed', page.assumed.length), remarks(page.assumed)) : null,
    page.notes.length ? folded(count('page.more-remarks', page.notes.length), remarks(page.notes)) : null,
  );

  // The photo is in this browser alone, so the server, which makes these files, does not have it.
  const photo = h('div');
  hasPhoto(context.siteId).then((there) => {
    if (there) {
      replace(photo, h('p', { class: 'note' }, icon('info'), h('span', null, t('settings.take.photo'))));
    }
  });
  const take = h(
    'section',
    { class: 'card no-print' },
    h('h2', null, t('settings.take')),
    h(
      'ul',
      { class: 'exports' },
      EXPORTS.map((file) => h('li', null, h('a', { href: `/api${base}/export/${file}`, download: '' }, t(`settings.export.${file}`)), h('span', { class: 'quiet' }, ` ${file.split('.').pop().toUpperCase()}`))),
    ),
    photo,
    h('p', null, h('a', { class: 'button', href: `${sitePath(context.siteId)}/labels` }, t('settings.labels'))),
    h('h3', null, t('settings.feed')),
    h('p', null, t('settings.feed.explain')),
    subscription(context, base),
  );

  const garden = h(
    'section',
    { class: 'card no-print' },
    h('h2', null, t('settings.garden')),
    h('p', null, t(canWorkAlone() ? 'settings.garden.yes' : 'settings.garden.no')),
  );

  const history = h('section', { class: 'card' }, h('h2', null, t('settings.history')), h('p', { class: 'quiet' }, t('page.wait')));
  const people = context.me?.signedIn && context.me.keeper ? h('section', { class: 'card no-print' }) : null;
  const sharing = owner ? h('section', { class: 'card no-print' }) : null;

  replace(
    root,
    h(
      'div',
      { class: 'page narrow settings-page' },
      h('h1', null, t('settings.title')),
      keptNote(page),
      reading,
      plan,
      take,
      garden,
      people,
      sharing,
      history,
      context.me?.signedIn ? ownAccount(context) : null,
    ),
  );
  const loading = [drawHistory(context, base, history)];
  if (sharing) {
    loading.push(drawSharing(context, base, sharing));
  }
  if (people) {
    loading.push(drawAccounts(context, people));
  }
  await Promise.all(loading);
}

function subscription(context, base) {
  const place = h('div', { role: 'status' });
  const make = async () => {
    try {
      const { path } = await context.api.post(`${base}/feed`);
      const address = new URL(path, location.origin).href;
      replace(
        place,
        field({ label: t('settings.feed.address'), help: t('settings.feed.secret'), control: h('input', { readonly: true, value: address, onfocus: (event) => event.target.select() }) }),
        h('button', { type: 'button', class: 'plain', onclick: end }, t('settings.feed.end')),
      );
    } catch (problem) {
      replace(place, problemNote(problem));
    }
  };
  const end = async () => {
    try {
      await context.api.delete(`${base}/feed`);
      replace(place, h('p', null, t('settings.feed.ended')));
    } catch (problem) {
      replace(place, problemNote(problem));
    }
  };
  return h('div', null, h('button', { type: 'button', onclick: make }, t('settings.feed.make')), place);
}

function problemNote(problem) {
  return h('div', { class: 'note bad' }, icon('warning'), h('p', null, problem.status === 0 ? t('shell.unreachable') : problem.message));
}

async function drawHistory(context, base, place) {
  const heading = h('h2', null, t('settings.history'));
  try {
    const lines = await context.api.get(`${base}/log`);
    replace(
      place,
      heading,
      h(
        'ol',
        { class: 'history' },
        lines.slice(0, 30).map((line) => h('li', null, h('span', null, line.kind === 'edit' ? line.label : t(`settings.log.${line.kind}`)), h('span', { class: 'quiet' }, ` ${line.author}, ${momentText(line.made)}`))),
      ),
      context.site?.readOnly ? null : h('p', { class: 'quiet' }, t('settings.undo-hint')),
    );
  } catch (problem) {
    replace(place, heading, problemNote(problem));
  }
}

async function drawSharing(context, base, place) {
  const heading = h('h2', null, t('settings.sharing'));
  try {
    draw(await context.api.get(`${base}/members`));
  } catch (problem) {
    replace(place, heading, problem.status === 404 ? h('p', null, t('settings.sharing.alone')) : problemNote(problem));
  }

  function draw(members) {
    const note = h('div', { role: 'alert' });
    const name = field({ label: t('settings.member.name'), control: h('input', { autocomplete: 'off', autocapitalize: 'none' }) });
    const role = field({
      label: t('settings.member.role'),
      control: h('select', { value: 'helper' }, ['helper', 'viewer', 'owner'].map((one) => h('option', { value: one }, t(`settings.role.${one}`)))),
    });
    const change = async (work, said) => {
      try {
        const answer = await work();
        draw(Array.isArray(answer) ? answer : await context.api.get(`${base}/members`));
        place.querySelector('input')?.focus();
        context.say(said);
      } catch (problem) {
        if (!problemBeside({ name, role }, problem)) {
          replace(note, problemNote(problem));
        }
      }
    };
    replace(
      place,
      heading,
      h('p', null, t('settings.sharing.explain')),
      note,
      h(
        'ul',
        { class: 'members' },
        members.map((member) =>
          h(
            'li',
            null,
            h('span', null, h('strong', null, member.name), h('span', { class: 'quiet' }, ` ${t(`settings.role.${member.role}`)}`)),
            members.length > 1
              ? h(
                  'button',
                  { type: 'button', class: 'plain', 'aria-label': t('settings.member.remove-of', member.name), onclick: () => change(() => context.api.delete(`${base}/members/${encodeURIComponent(member.id)}`), t('settings.member.gone', member.name)) },
                  t('settings.member.remove'),
                )
              : null,
          ),
        ),
      ),
      h(
        'form',
        {
          novalidate: true,
          onsubmit: (event) => {
            event.preventDefault();
            name.problem(name.control.value.trim() ? '' : t('login.need-name'));
            if (name.control.value.trim()) {
              const called = name.control.value.trim();
              change(() => context.api.post(`${base}/members`, { name: called, role: role.control.value }), t('settings.member.shared', called));
            }
          },
        },
        h('div', { class: 'pair' }, name, role),
        h('button', { type: 'submit' }, icon('add'), t('settings.member.add')),
      ),
    );
  }
}
