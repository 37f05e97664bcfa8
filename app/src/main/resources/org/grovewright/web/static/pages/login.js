// Signing in.
import { h, replace } from '../dom.js';
import { field } from '../forms.js';
import { icon } from '../icons.js';
import { t } from '../i18n.js';

export async function show(root, context) {
  const name = field({ label: t('login.name'), control: h('input', { autocomplete: 'username', required: true, autocapitalize: 'none' }) });
  const password = field({ label: t('login.password'), control: h('input', { type: 'password', autocomplete: 'current-password', required: true }) });
  const problem = h('div', { role: 'alert' });

  async function submit(event) {
    event.preventDefault();
    name.problem(name.control.value.trim() ? '' : t('login.need-name'));
    password.problem(password.control.value ? '' : t('login.need-password'));
    if (!name.control.value.trim() || !password.control.value) {
      (name.control.value.trim() ? password : name).control.focus();
      return;
    }
    replace(problem);
    try {
      await context.api.post('/login', { name: name.control.value.trim(), password: password.control.value });
    } catch (failure) {
      const text = failure.status === 0 ? t('shell.unreachable') : failure.code === 'wrong-password' ? t('login.wrong') : failure.message;
      replace(problem, h('div', { class: 'note bad' }, icon('warning'), h('p', null, text)));
      password.control.value = '';
      password.control.focus();
      return;
    }
    const to = context.query.get('to') ?? '/sites';
    // Only a path of ours: never another server's address.
    history.replaceState(null, '', /^\/(?![/\\])/.test(to) ? to : '/sites');
    await context.reload();
  }

  replace(
    root,
    h(
      'div',
      { class: 'page narrow' },
      h('h1', null, t('login.title')),
      h('p', null, t('login.explain')),
      h('form', { class: 'card', novalidate: true, onsubmit: submit }, problem, name, password, h('button', { type: 'submit', class: 'primary' }, t('login.go'))),
    ),
  );
}
