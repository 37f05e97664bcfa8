// The form for signing in: on its page, and over a page whose session has ended meanwhile.
import { api, useToken } from './api.js';
import { add, h, replace } from './dom.js';
import { field } from './forms.js';
import { icon } from './icons.js';
import { t } from './i18n.js';

/** The form. Calls `done(account)` once the server has let somebody in. */
export function signInForm({ name: known = '', done, more }) {
  const name = field({ label: t('login.name'), control: h('input', { autocomplete: 'username', required: true, autocapitalize: 'none', value: known }) });
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
    let answer;
    try {
      answer = await api.post('/login', { name: name.control.value.trim(), password: password.control.value });
    } catch (failure) {
      if (failure.code === 'wrong-password') {
        password.problem(t('login.wrong'));
      } else {
        const text = failure.status === 0 ? t('shell.unreachable') : failure.message;
        replace(problem, h('div', { class: 'note bad' }, icon('warning'), h('p', null, text)));
      }
      password.control.value = '';
      password.control.focus();
      return;
    }
    useToken(answer.csrf);
    await done(answer.account);
  }

  return h(
    'form',
    { class: 'stack', novalidate: true, onsubmit: submit },
    problem,
    name,
    password,
    h('div', { class: 'row' }, h('button', { type: 'submit', class: 'primary' }, t('login.go')), more),
  );
}

let asking;

/**
 * Asks over the page to sign in again, so that the page keeps what was typed. True once the same
 * account is signed in; another one gets the page anew.
 */
export function askToSignIn(account) {
  asking ??= new Promise((resolve) => {
    const before = document.activeElement;
    const dialog = h('dialog', { class: 'sign-in', 'aria-labelledby': 'sign-in-title' });
    let signedIn = false;
    const done = (now) => {
      if (account && now.id !== account.id) {
        location.reload();
        return;
      }
      signedIn = true;
      dialog.close();
    };
    add(
      dialog,
      h('h2', { id: 'sign-in-title' }, t('login.again')),
      h('p', null, t('login.again.explain')),
      signInForm({ name: account?.name, done, more: h('button', { type: 'button', onclick: () => dialog.close() }, t('login.not-now')) }),
    );
    dialog.addEventListener('close', () => {
      dialog.remove();
      asking = undefined;
      before?.focus?.({ preventScroll: true });
      resolve(signedIn);
    });
    document.body.append(dialog);
    dialog.showModal();
    if (account?.name) {
      dialog.querySelector('input[type=password]').focus();
    }
  });
  return asking;
}
