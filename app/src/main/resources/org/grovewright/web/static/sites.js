// The sites of the one who is using it; without any, the way to the first plan.
import { h } from './dom.js';
import { icon } from './icons.js';

export async function show(root, { api, t, navigate }) {
  const sites = (await api.get('/sites')).filter((site) => !site.inBin);
  if (sites.length === 0) {
    return navigate('/start', { replaced: true });
  }
  root.append(
    h(
      'div',
      { class: 'page narrow' },
      h('h1', null, t('shell.sites.title')),
      h(
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
      ),
      h('a', { class: 'button primary', href: '/start' }, icon('add'), t('shell.sites.new')),
    ),
  );
  return undefined;
}
