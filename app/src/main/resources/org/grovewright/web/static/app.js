// The frame: who is using it, which page is asked for, and the questions that lead to the pages.
import { api, ApiError, signInWith, troubleWith, useToken } from './api.js';
import { add, h, replace } from './dom.js';
import { icon } from './icons.js';
import * as texts from './i18n.js';
import { start as startOffline } from './offline.js';
import { start as startPaper } from './paper.js';
import { signOut } from './pages/accounts.js';
import { askToSignIn } from './sign-in.js';

const { t } = texts;

/** The questions in the order in which a season asks them, and the module that answers each. */
const QUESTIONS = [
  { key: 'map', load: () => import('./map/map-page.js') },
  { key: 'buy', load: () => import('./pages/buy.js') },
  { key: 'today', load: () => import('./pages/today.js') },
  { key: 'water', load: () => import('./pages/water.js') },
  { key: 'plants', load: () => import('./pages/plants.js') },
];

const ROUTES = [
  { pattern: /^\/(?:sites)?$/, names: [], load: () => import('./sites.js') },
  { pattern: /^\/start$/, names: [], load: () => import('./start/start-page.js') },
  { pattern: /^\/login$/, names: [], load: () => import('./pages/login.js') },
  { pattern: /^\/site\/([^/]+)\/plant\/([^/]+)$/, names: ['siteId', 'plantId'], question: 'plants', load: () => import('./pages/plant.js') },
  { pattern: /^\/site\/([^/]+)\/labels$/, names: ['siteId'], question: 'settings', load: () => import('./pages/labels.js') },
  { pattern: /^\/site\/([^/]+)\/settings$/, names: ['siteId'], question: 'settings', load: () => import('./pages/settings.js') },
  { pattern: /^\/site\/([^/]+)$/, names: ['siteId'], question: 'map', load: QUESTIONS[0].load },
  ...QUESTIONS.map(({ key, load }) => ({
    pattern: new RegExp(`^/site/([^/]+)/${key}$`),
    names: ['siteId'],
    question: key,
    load,
  })),
];

const app = document.getElementById('app');
const live = h('div', { class: 'hidden-text', role: 'status', 'aria-live': 'polite' });
const main = h('main', { id: 'main', tabindex: '-1' });
const frame = h('div', { class: 'frame' });

/** Why nothing can be saved; it stands on every page. */
const troublePlace = h('div', { role: 'status' });

const session = { me: undefined, site: undefined };
let dispose;
let visit = 0;

function route(path) {
  for (const candidate of ROUTES) {
    const match = candidate.pattern.exec(path);
    if (match) {
      const params = {};
      candidate.names.forEach((name, i) => {
        params[name] = decodeURIComponent(match[i + 1]);
      });
      return { ...candidate, params };
    }
  }
  return undefined;
}

function drawFrame(where) {
  const site = where?.params.siteId;
  const base = site ? `/site/${encodeURIComponent(site)}` : undefined;
  document.body.classList.toggle('with-questions', Boolean(base));
  replace(
    frame,
    h('a', { class: 'skip', href: '#main', onclick: toMain }, t('shell.skip')),
    h(
      'header',
      { class: 'top' },
      h(
        'a',
        { class: 'brand', href: '/sites', 'aria-label': t('shell.home') },
        h('img', { src: '/static/icon.svg', alt: '' }),
        h('span', { class: 'word' }, 'Grovewright'),
      ),
      h('div', { class: 'site-name' }, session.site?.name ?? ''),
      h(
        'div',
        { class: 'tools', id: 'shell-tools' },
        base
          ? h(
              'a',
              { href: `${base}/settings`, 'aria-current': where.question === 'settings' ? 'page' : null },
              icon('settings'),
              h('span', { class: 'word' }, t('shell.settings')),
            )
          : session.me?.signedIn
            ? h('button', { type: 'button', class: 'plain', onclick: () => signOut({ api }) }, t('settings.sign-out'))
            : null,
      ),
    ),
    base
      ? h(
          'nav',
          { class: 'questions', 'aria-label': t('shell.questions') },
          h(
            'ul',
            null,
            QUESTIONS.map(({ key }) =>
              h(
                'li',
                null,
                h(
                  'a',
                  { href: `${base}/${key}`, 'aria-current': where.question === key ? 'page' : null },
                  icon(key),
                  h('span', { class: 'long' }, t(`shell.question.${key}`)),
                  h('span', { class: 'short', 'aria-hidden': 'true' }, t(`shell.short.${key}`)),
                ),
              ),
            ),
          ),
        )
      : null,
    troublePlace,
  );
  drawTrouble();
}

/** Why nothing can be saved, known from the start or met since, with the way to what can be done about it. */
function drawTrouble() {
  const known = session.me?.trouble ?? session.refused;
  replace(
    troublePlace,
    known
      ? h(
          'div',
          { class: 'note bad trouble' },
          icon('warning'),
          h(
            'div',
            null,
            h('p', null, known.message),
            known.code === 'damaged' && session.me?.keeper && location.pathname !== '/sites'
              ? h('p', null, h('a', { href: '/sites' }, t('shell.copies.way')))
              : null,
          ),
        )
      : null,
  );
}

function toMain(event) {
  event.preventDefault();
  main.focus();
}

/** Says something to those who hear the page instead of seeing it. */
export function say(text) {
  live.textContent = '';
  // The same words twice are only spoken twice if they are seen to change.
  setTimeout(() => {
    live.textContent = text;
  }, 30);
}

/** Goes to a page of the application. */
export function navigate(path, { replaced = false } = {}) {
  if (replaced) {
    history.replaceState(null, '', path);
  } else {
    history.pushState(null, '', path);
  }
  return show();
}

async function leavePage() {
  const leaving = dispose;
  dispose = undefined;
  try {
    await leaving?.();
  } catch (problem) {
    console.error(problem);
  }
}

async function show() {
  visit += 1;
  const mine = visit;
  const path = location.pathname.replace(/(.)\/$/, '$1');
  const where = route(path);
  await leavePage();
  if (session.me?.needsLogin && !session.me.loggedIn && path !== '/login') {
    return navigate(`/login?to=${encodeURIComponent(path + location.search)}`, { replaced: true });
  }
  const siteId = where?.params.siteId;
  if (siteId !== session.site?.id) {
    session.site = undefined;
  }
  drawFrame(where);
  main.setAttribute('aria-busy', 'true');
  const root = h('div', { class: 'root' });
  try {
    if (!where) {
      throw new ApiError(404, 'no-page', t('shell.noPage'));
    }
    const [module] = await Promise.all([where.load(), siteId ? loadSite(siteId) : undefined]);
    if (mine !== visit) {
      return;
    }
    drawFrame(where);
    replace(main, root);
    window.scrollTo(0, 0);
    const context = {
      api,
      t,
      say,
      navigate,
      siteId,
      params: where.params,
      query: new URLSearchParams(location.search),
      site: session.site,
      me: session.me,
      reload: start,
      siteChanged,
    };
    const done = await module.show(root, context);
    if (mine === visit) {
      dispose = done;
    } else {
      await done?.();
    }
  } catch (problem) {
    if (mine === visit) {
      if (problem.status === 401 && path !== '/login') {
        // Its session has ended; the frame must know it, or it would lead back here.
        session.me = { ...session.me, loggedIn: false, signedIn: false };
        return navigate(`/login?to=${encodeURIComponent(path + location.search)}`, { replaced: true });
      }
      console.error(problem);
      replace(main, failure(problem));
    }
  } finally {
    if (mine === visit) {
      main.removeAttribute('aria-busy');
      const heading = main.querySelector('h1');
      document.title = heading ? `${heading.textContent} – Grovewright` : 'Grovewright';
      if (visit > 1 && !main.contains(document.activeElement)) {
        main.focus({ preventScroll: true });
      }
    }
  }
}

async function loadSite(siteId) {
  try {
    session.site = await api.get(`/sites/${encodeURIComponent(siteId)}`);
  } catch (problem) {
    // In the garden without a connection the pages show what they kept.
    if (problem.status !== 0) {
      throw problem;
    }
    session.site = session.site ?? { id: siteId, name: '', offline: true };
  }
}

/** A page tells that the site has a new state, for its name and version. */
function siteChanged(state) {
  session.site = { ...session.site, ...state };
  const name = frame.querySelector('.site-name');
  if (name) {
    name.textContent = session.site.name ?? '';
  }
}

function failure(problem) {
  const text =
    problem instanceof ApiError
      ? problem.status === 0
        ? t('shell.unreachable')
        : problem.message
      : t('shell.broken');
  return h(
    'div',
    { class: 'page narrow' },
    h('h1', null, t(problem.status === 404 ? 'shell.notFound' : 'shell.problem')),
    h('div', { class: 'note bad', role: 'alert' }, icon('warning'), h('p', null, text)),
    h(
      'p',
      { class: 'row' },
      h('button', { type: 'button', class: 'primary', onclick: () => show() }, t('shell.again')),
      h('a', { class: 'button', href: '/sites' }, t('shell.toSites')),
    ),
  );
}

/** A page that the browser brings back as it was must not show what was left by signing out. */
async function lookAgain() {
  app.hidden = true;
  try {
    const me = await api.get('/me');
    useToken(me.csrf);
    if (me.account?.id !== session.me.account?.id) {
      session.me = me;
      replace(main);
      await show();
    }
  } catch {
    // Without a connection the page stays as it was.
  } finally {
    app.hidden = false;
  }
}

function followLinks(event) {
  if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) {
    return;
  }
  const link = event.target.closest?.('a[href]');
  if (!link || link.target || link.hasAttribute('download') || link.origin !== location.origin) {
    return;
  }
  const ours = route(link.pathname.replace(/(.)\/$/, '$1'));
  if (ours && !(link.hash && link.pathname === location.pathname)) {
    event.preventDefault();
    navigate(link.pathname + link.search);
  }
}

function useTheme(theme) {
  if (theme === 'light' || theme === 'dark') {
    document.documentElement.dataset.theme = theme;
  } else {
    delete document.documentElement.dataset.theme;
  }
}

async function start() {
  try {
    session.me = await api.get('/me');
    useToken(session.me.csrf);
  } catch (problem) {
    session.me = { settings: {}, offline: problem.status === 0 };
  }
  const settings = session.me.settings ?? {};
  useTheme(settings.theme);
  await texts.load(settings.language);
  document.documentElement.lang = texts.language();
  await show();
}

startPaper();
troubleWith((refused) => {
  if (refused?.message !== session.refused?.message) {
    session.refused = refused;
    drawTrouble();
  }
});
signInWith(() => askToSignIn(session.me?.account));
add(app, frame, main, live);
document.addEventListener('click', followLinks);
window.addEventListener('popstate', () => show());
window.addEventListener('pageshow', (event) => event.persisted && session.me?.signedIn && lookAgain());
start().then(startOffline);
