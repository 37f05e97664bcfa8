// Signing in.
import { h, replace } from '../dom.js';
import { t } from '../i18n.js';
import { signInForm } from '../sign-in.js';

export async function show(root, context) {
  async function done() {
    const to = context.query.get('to') ?? '/sites';
    // Only a path of ours: never another server's address.
    history.replaceState(null, '', /^\/(?![/\\])/.test(to) ? to : '/sites');
    await context.reload();
  }

  replace(
    root,
    h('div', { class: 'page narrow' }, h('h1', null, t('login.title')), h('p', null, t('login.explain')), h('div', { class: 'card' }, signInForm({ done }))),
  );
}
