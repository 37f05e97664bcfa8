// The working of a figure: its formula and what went in, each of which can be opened in turn.
import { h, replace } from '../dom.js';
import { icon } from '../icons.js';
import { language, t } from '../i18n.js';

let dialog;

/** Opens the working of a figure over the page; figures of a day's advice are of that day. */
export function openWorking(context, id, day) {
  const before = document.activeElement;
  dialog?.remove();
  const heading = h('h2', { id: 'working-title', tabindex: '-1' }, t('figure.working'));
  const body = h('div', { class: 'working-body' });
  const back = h('button', { type: 'button', class: 'plain', hidden: true, onclick: () => step() }, icon('back'), t('figure.back'));
  const close = h('button', { type: 'button', class: 'plain', onclick: () => dialog.close() }, icon('close'), t('figure.close'));
  const trail = [];
  dialog = h(
    'dialog',
    { class: 'working', 'aria-labelledby': 'working-title' },
    h('div', { class: 'working-tools' }, back, close),
    heading,
    body,
  );
  const mine = dialog;
  document.body.append(dialog);
  mine.addEventListener('close', () => {
    mine.remove();
    before?.focus?.();
  });
  mine.addEventListener('click', (event) => {
    // A click on the ground beside the sheet closes it.
    if (event.target === mine) {
      mine.close();
    }
  });

  function step() {
    trail.pop();
    const last = trail.pop();
    if (last) {
      load(last);
    }
  }

  async function load(figureId) {
    trail.push(figureId);
    back.hidden = trail.length < 2;
    body.setAttribute('aria-busy', 'true');
    try {
      const query = new URLSearchParams({ lang: language(), ...(figureId.startsWith('advice.') ? { date: day } : {}) });
      const figure = await context.api.get(
        `/sites/${encodeURIComponent(context.siteId)}/figures/${encodeURIComponent(figureId)}?${query}`,
      );
      draw(figure);
    } catch (problem) {
      replace(heading, t('figure.working'));
      replace(body, h('p', { class: 'note bad', role: 'alert' }, problem.status === 0 ? t('figure.offline') : problem.message));
    } finally {
      body.removeAttribute('aria-busy');
      heading.focus();
    }
  }

  function draw(figure) {
    replace(heading, figure.label);
    replace(
      body,
      h('p', { class: 'working-value' }, figure.value, figure.si === figure.value ? null : h('span', { class: 'quiet' }, ` (${figure.si})`)),
      h('h3', null, t('figure.how')),
      h('p', { class: 'formula' }, figure.formula),
      figure.inputs.length ? h('h3', null, t('figure.inputs')) : null,
      figure.inputs.length
        ? h(
            'ul',
            { class: 'inputs' },
            figure.inputs.map((input) =>
              h(
                'li',
                null,
                h('span', { class: 'symbol' }, input.label),
                h('span', { class: 'input-value' }, input.value, input.si === input.value ? null : h('span', { class: 'quiet' }, ` (${input.si})`)),
                input.figure
                  ? h('button', { type: 'button', class: 'worked', onclick: () => load(input.figure) }, input.origin)
                  : h('span', { class: 'quiet' }, input.origin),
              ),
            ),
          )
        : null,
      h('h3', null, t('figure.source')),
      h('p', { class: 'quiet' }, figure.source),
    );
  }

  mine.showModal();
  load(id);
}
