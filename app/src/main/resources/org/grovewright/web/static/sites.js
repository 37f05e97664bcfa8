// The sites of the one who is using it; without any, the way to the first plan. Where the database is
// damaged, the daily copies to go back to.
import { h, replace } from './dom.js';
import { icon } from './icons.js';

export async function show(root, context) {
  const { api, t, navigate, me } = context;
  const damaged = me?.trouble?.code === 'damaged';
  const sites = await api.get('/sites').catch((problem) => {
    if (damaged) {
      return undefined;
    }
    throw problem;
  });
  if (!me?.trouble && sites.length === 0) {
    return navigate('/start', { replaced: true });
  }
  root.append(
    h(
      'div',
      { class: 'page narrow' },
      h('h1', null, t('shell.sites.title')),
      sites
        ? h(
            'ul',
            { class: 'site-list' },
            sites.map((site) =>
              h(
                'li',
                null,
                h(
                  'a',
                  { href: `/site/${encodeURIComponent(site.id)}/map` },
                  icon('sites'),
                  h('span', null, h('strong', null, site.name), h('span', { class: 'quiet' }, t(`shell.role.${String(site.role).toLowerCase()}`))),
                  icon('next'),
                ),
              ),
            ),
          )
        : null,
      damaged && me.keeper ? copies(context, await api.get('/copies')) : null,
      me?.trouble ? null : h('a', { class: 'button primary', href: '/start' }, icon('add'), t('shell.sites.new')),
    ),
  );
  return undefined;
}

/** The daily copies of the whole database; going back to one is asked twice. */
function copies({ api, t, say, reload }, list) {
  const note = h('div', { role: 'alert' });

  async function goBack(copy) {
    try {
      await api.post(`/copies/${encodeURIComponent(copy.name)}/restore`);
    } catch (problem) {
      replace(note, h('div', { class: 'note bad' }, icon('warning'), h('p', null, problem.status === 0 ? t('shell.unreachable') : problem.message)));
      return;
    }
    await reload();
    say(t('shell.copies.done', copy.day));
  }

  function row(copy) {
    const tools = h('span', { class: 'row' });
    const first = (focus) => {
      const button = h('button', { type: 'button', onclick: sure }, t('shell.copies.back', copy.day));
      replace(tools, button);
      if (focus) {
        button.focus();
      }
    };
    const sure = () => {
      const yes = h('button', { type: 'button', class: 'primary', onclick: () => goBack(copy) }, t('shell.copies.sure', copy.day));
      replace(tools, yes, h('button', { type: 'button', class: 'plain', onclick: () => first(true) }, t('login.not-now')));
      yes.focus();
    };
    first(false);
    return h('li', null, tools);
  }

  return h(
    'section',
    { class: 'card' },
    h('h2', null, t('shell.copies')),
    h('p', null, t(list.length ? 'shell.copies.explain' : 'shell.copies.none')),
    note,
    h('ul', { class: 'plain-list' }, list.map(row)),
  );
}
