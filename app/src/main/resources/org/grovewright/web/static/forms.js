// Fields with their label, help and error tied together for screen readers.
import { add, h, uniqueId } from './dom.js';
import { icon } from './icons.js';

/**
 * A field: `control` is an input, select or textarea. The element gets `problem(text)` to show or
 * clear what is wrong beside the field.
 */
export function field({ label, optional, help, unit, control }) {
  const id = control.id || uniqueId('field');
  control.id = id;
  const error = h('p', { class: 'error', id: `${id}-error` });
  const described = [`${id}-error`];
  let helpElement = null;
  if (help) {
    helpElement = h('p', { class: 'help', id: `${id}-help` }, help);
    described.unshift(`${id}-help`);
  }
  control.setAttribute('aria-describedby', described.join(' '));
  const element = h(
    'div',
    { class: 'field' },
    h('label', { for: id }, label, optional ? h('span', { class: 'optional' }, ` (${optional})`) : null),
    helpElement,
    unit ? h('div', { class: 'with-unit' }, control, h('span', { class: 'unit' }, unit)) : control,
    error,
  );
  element.problem = (text) => showProblem(control, error, text);
  element.control = control;
  return element;
}

/** Says what the server refused beside the field that it names; whether that is one of these. */
export function problemBeside(fields, problem) {
  const wrong = Object.hasOwn(fields, problem.field ?? '') ? fields[problem.field] : null;
  wrong?.problem(problem.message);
  wrong?.control.focus();
  return Boolean(wrong);
}

function showProblem(control, error, text) {
  error.replaceChildren();
  if (text) {
    add(error, icon('warning'), h('span', null, text));
    control.setAttribute('aria-invalid', 'true');
  } else {
    control.removeAttribute('aria-invalid');
  }
}

/** Radio buttons: `choices` are {value, label, help?}. Calls `onchange(value)`. */
export function choices({ legend, help, name, value, choices: list, onchange }) {
  const group = uniqueId('choice');
  const error = h('p', { class: 'error', id: `${group}-error` });
  const element = h(
    'fieldset',
    { 'aria-describedby': `${group}-error` },
    h('legend', null, legend),
    help ? h('p', { class: 'help' }, help) : null,
    list.map((choice) =>
      h(
        'label',
        { class: 'choice' },
        h('input', {
          type: 'radio',
          name,
          value: choice.value,
          checked: choice.value === value,
          onchange: () => onchange(choice.value),
        }),
        h('span', null, choice.label, choice.help ? h('span', { class: 'help' }, h('br'), choice.help) : null),
      ),
    ),
    error,
  );
  element.problem = (text) => {
    error.replaceChildren();
    if (text) {
      add(error, icon('warning'), h('span', null, text));
    }
  };
  element.control = element.querySelector('input:checked') ?? element.querySelector('input');
  return element;
}

/** A number as people type it, with a point or a comma; NaN if it is none. */
export function numberOf(text) {
  const plain = String(text ?? '').trim().replace(',', '.').replace('\u2212', '-');
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
}
