// Who can sign in: the own account, and for the owner of the program everybody's.
import { h, replace } from '../dom.js';
import { field, problemBeside } from '../forms.js';
import { icon } from '../icons.js';
import { t } from '../i18n.js';
import { forgetPages } from '../offline.js';

/** Ends the session and forgets what this browser kept of it. */
export async function signOut({ api }) {
  try {
    await api.post('/logout', {}, { signIn: false });
  } catch (problem) {
    // Whose session has ended already is signed out.
    if (problem.status !== 401) {
      throw problem;
    }
  }
  await forgetPages();
  sessionStorage.clear();
  location.assign('/login');
}

function noteOf(problem) {
  return h('div', { class: 'note bad' }, icon('warning'), h('p', null, problem.status === 0 ? t('shell.unreachable') : problem.message));
}

function passwordField(label, autocomplete, help) {
  return field({ label, help, control: h('input', { type: 'password', autocomplete, required: true }) });
}

/** The own account: its password, and the way out. */
export function ownAccount(context) {
  const note = h('div', { role: 'alert' });
  const old = passwordField(t('settings.password.old'), 'current-password');
  const wanted = passwordField(t('settings.password.new'), 'new-password', t('settings.password.help'));

  async function change(event) {
    event.preventDefault();
    replace(note);
    old.problem(old.control.value ? '' : t('login.need-password'));
    wanted.problem(wanted.control.value ? '' : t('login.need-password'));
    if (!old.control.value || !wanted.control.value) {
      (old.control.value ? wanted : old).control.focus();
      return;
    }
    try {
      await context.api.put('/me/password', { old: old.control.value, password: wanted.control.value });
    } catch (problem) {
      if (!problemBeside({ old, password: wanted }, problem)) {
        replace(note, noteOf(problem));
      }
      return;
    }
    // A new password ends every session of the account, this one too.
    location.assign('/login');
  }

  return h(
    'section',
    { class: 'card no-print' },
    h('h2', null, t('settings.account')),
    h('p', null, t('settings.account.is', context.me.account.name)),
    note,
    h(
      'details',
      null,
      h('summary', null, t('settings.password.change')),
      h(
        'form',
        { class: 'stack', novalidate: true, onsubmit: change },
        h('input', { type: 'hidden', autocomplete: 'username', value: context.me.account.name }),
        old,
        wanted,
        h('div', { class: 'row' }, h('button', { type: 'submit' }, t('settings.password.save'))),
      ),
    ),
    h('p', null, h('button', { type: 'button', onclick: () => signOut(context).catch((problem) => replace(note, noteOf(problem))) }, t('settings.sign-out'))),
  );
}

/** Everybody's accounts; only the owner of the program has this. */
export async function drawAccounts(context, place) {
  try {
    draw(await context.api.get('/accounts'));
  } catch (problem) {
    replace(place, h('h2', null, t('settings.people')), noteOf(problem));
  }

  function draw(accounts) {
    const note = h('div', { role: 'alert' });
    const name = field({ label: t('login.name'), control: h('input', { autocomplete: 'off', autocapitalize: 'none', required: true }) });
    const password = passwordField(t('login.password'), 'new-password', t('settings.password.help'));
    const change = async (work, said) => {
      replace(note);
      try {
        await work();
        draw(await context.api.get('/accounts'));
        place.querySelector('input')?.focus();
        context.say(said);
      } catch (problem) {
        if (!problemBeside({ name, password }, problem)) {
          replace(note, noteOf(problem));
        }
      }
    };

    function submit(event) {
      event.preventDefault();
      const called = name.control.value.trim();
      name.problem(called ? '' : t('login.need-name'));
      password.problem(password.control.value ? '' : t('login.need-password'));
      if (!called || !password.control.value) {
        (called ? password : name).control.focus();
        return;
      }
      change(() => context.api.post('/accounts', { name: called, password: password.control.value }), t('settings.people.added', called));
    }

    function row(account) {
      const takeAway = () =>
        change(() => context.api.delete(`/accounts/${encodeURIComponent(account.id)}`), t('settings.people.gone', account.name));
      const tools = h('span', { class: 'row' });
      const ask = () => {
        const yes = h('button', { type: 'button', class: 'plain', 'aria-label': t('settings.people.sure-of', account.name), onclick: takeAway }, t('settings.people.sure'));
        replace(tools, yes, h('button', { type: 'button', class: 'plain', onclick: first }, t('login.not-now')));
        yes.focus();
      };
      const first = (event) => {
        const button = h('button', { type: 'button', class: 'plain', 'aria-label': t('settings.people.remove-of', account.name), onclick: ask }, t('settings.people.remove'));
        replace(tools, button);
        if (event) {
          button.focus();
        }
      };
      if (account.id !== context.me.account.id) {
        first();
      }
      return h('li', null, h('strong', null, account.name), tools);
    }

    replace(
      place,
      h('h2', null, t('settings.people')),
      h('p', null, t('settings.people.explain')),
      note,
      h('ul', { class: 'members' }, accounts.filter((account) => account.canSignIn).map(row)),
      h('form', { class: 'people-form', novalidate: true, onsubmit: submit }, h('div', { class: 'pair' }, name, password), h('button', { type: 'submit' }, icon('add'), t('settings.people.add'))),
    );
  }
}
