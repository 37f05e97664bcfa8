// The journal of a plant or of the whole place: a form for what was done and seen, and what is in it.
import { h, replace } from '../dom.js';
import { field, numberOf } from '../forms.js';
import { icon } from '../icons.js';
import { count, dayText, t } from '../i18n.js';
import { today } from '../pages/common.js';
import { amountText, KINDS, kindText, unitsOf } from './amounts.js';
import { photoField } from './picture.js';
import { drop, dropPhoto, journalOf, onChange, settle, sync, write } from './queue.js';
import { newId } from './sending.js';

const SHOWN = 12;

/** What became of making the plan with an entry, by the entry: it is read after the page is drawn anew. */
const planned = new Map();

/** Whether the plan can be made with what an entry says, which a server has read already. */
function measured(entry) {
  return entry.kind.startsWith('measured-') && entry.subjectKind === 'plant' && typeof entry.amount?.value === 'number';
}

/**
 * The journal of `about`, {subjectKind, subject, zones?}; that of the whole site shows all its
 * entries, and lets a watering be noted for one of the zones, {id, name}.
 */
export function journal(context, about) {
  const metric = context.me?.settings?.units !== 'us';
  const list = h('div', { class: 'journal-list' });
  const state = h('p', { class: 'sync-state no-print', role: 'status', hidden: true });
  const formPlace = h('div', { class: 'no-print' });
  const element = h('div', { class: 'journal' }, formPlace, state, list);
  const mayPlan = Boolean(context.site && !context.site.readOnly && !context.site.offline);
  const readOnly = context.site?.journalReadOnly && !context.site?.offline;
  /** Addresses of photos that are on this device alone, by the stamps of their changes. */
  const addresses = new Map();
  let all = false;
  let form;

  async function draw() {
    if (!element.isConnected && element.dataset.drawn) {
      ended();
      form?.photo?.forget();
      addresses.forEach((address) => URL.revokeObjectURL(address));
      addresses.clear();
      return;
    }
    element.dataset.drawn = 'yes';
    const entries = (await journalOf(context.siteId)).filter(
      ({ entry }) => about.subjectKind === 'site' || (entry.subjectKind === about.subjectKind && entry.subject === about.subject),
    );
    replace(
      list,
      entries.length === 0 ? h('p', { class: 'quiet' }, t('journal.empty')) : null,
      h('ul', { class: 'entries' }, entries.map((one, i) => {
        const line = drawEntry(one);
        // Paper has no button to show the rest, so the rest stands there too.
        line.classList.toggle('print-only', !all && i >= SHOWN && !one.change && !one.picture);
        return line;
      })),
      !all && entries.length > SHOWN
        ? h('button', { type: 'button', class: 'plain no-print', onclick: () => { all = true; draw(); } }, count('journal.all', entries.length))
        : null,
    );
    const waiting = entries.filter(({ change, picture }) => change?.state === 'waiting' || picture?.state === 'waiting').length;
    state.textContent = waiting ? count('journal.waiting', waiting) : '';
    state.hidden = waiting === 0;
  }

  function words(entry) {
    return [
      h('strong', null, kindText(entry.kind)),
      entry.amount ? ` ${amountText(entry.amount, metric)}` : null,
      about.subjectKind === 'site' && entry.subject ? h('span', { class: 'tag' }, entry.subject) : null,
      entry.note ? h('div', { class: 'entry-note' }, entry.note) : null,
    ];
  }

  function addressOf(entry, picture) {
    if (!picture) {
      return entry.photo?.path;
    }
    if (picture.blob && !addresses.has(picture.stamp)) {
      addresses.set(picture.stamp, URL.createObjectURL(picture.blob));
    }
    return addresses.get(picture.stamp);
  }

  function photo(entry, picture) {
    const address = addressOf(entry, picture);
    const of = entry.subject || t('journal.everywhere');
    return [
      address
        ? h(
            'a',
            { class: 'entry-photo', href: address, target: '_blank', rel: 'noopener' },
            h('img', { src: address, loading: 'lazy', alt: t('journal.photo-of', of, dayText(entry.day), entry.note || kindText(entry.kind)) }),
          )
        : null,
      picture?.state === 'waiting' ? h('div', null, h('span', { class: 'tag warn' }, t('journal.photo-not-sent'))) : null,
      picture?.state === 'refused'
        ? h(
            'div',
            { class: 'note bad' },
            icon('warning'),
            h(
              'div',
              null,
              h('p', null, t('journal.photo-refused', picture.why)),
              h('button', { type: 'button', onclick: () => dropPhoto(entry.id) }, t('journal.photo-drop')),
            ),
          )
        : null,
    ];
  }

  function drawEntry({ entry, change, picture }) {
    const mine = h(
      'div',
      { class: 'entry-body' },
      h('div', { class: 'quiet' }, dayText(entry.day), entry.author ? `, ${entry.author}` : null),
      change?.deleted || entry.deleted ? h('del', null, words(entry)) : h('div', null, words(entry)),
      photo(entry, picture),
    );
    if (change?.state === 'conflict') {
      return conflict(change, mine);
    }
    return h(
      'li',
      { class: change ? 'entry waiting' : 'entry', dataset: { entry: entry.id } },
      mine,
      change?.state === 'refused' ? h('p', { class: 'note bad' }, icon('warning'), h('span', null, t('journal.refused', change.why))) : null,
      change?.state === 'waiting' ? h('span', { class: 'tag warn' }, t('journal.not-sent')) : null,
      outcome(planned.get(entry.id)),
      readOnly || entry.deleted
        ? null
        : h(
            'div',
            { class: 'row entry-tools no-print' },
            measured(entry) && !change && mayPlan
              ? h('button', { type: 'button', class: 'plain', onclick: () => plan(entry) }, t('journal.plan'))
              : null,
            h('button', { type: 'button', class: 'plain', onclick: () => edit(entry, change, picture) }, t('journal.edit')),
            change?.state === 'refused'
              ? h('button', { type: 'button', class: 'plain', onclick: () => drop(change) }, t('journal.drop'))
              : h('button', { type: 'button', class: 'plain', onclick: () => remove(entry, change) }, t('journal.delete')),
          ),
    );
  }

  function outcome(one) {
    return one ? h('p', { class: one.done ? 'note' : 'note bad' }, icon(one.done ? 'check' : 'warning'), h('span', null, one.text)) : null;
  }

  /** Writes what was measured on a day into the description, so that the plan is made with it. */
  async function plan(entry) {
    const fields = { measured_spread: null, measured_height: null, measured_on: entry.day };
    const same = (await journalOf(context.siteId)).map((one) => one.entry);
    // The tape's other reading of that day belongs to it; one of another day would not fit the date.
    for (const one of [...same, entry]) {
      if (measured(one) && !one.deleted && one.subject === entry.subject && one.day === entry.day) {
        fields[one.kind.replace('-', '_')] = `${Number(one.amount.value.toPrecision(6))} m`;
      }
    }
    try {
      const base = `/sites/${encodeURIComponent(context.siteId)}`;
      const { version } = await context.api.get(base);
      await context.api.post(`${base}/edits`, {
        onVersion: version,
        label: t('journal.planned-by', entry.subject),
        operations: [{ type: 'setPlant', plant: entry.subject, fields }],
        clientId: newId(),
      });
      planned.clear();
      tell(entry, true, t('journal.planned'));
      await context.reload?.();
    } catch (problem) {
      tell(entry, false, t('journal.not-planned', problem.message));
      await draw();
    }
  }

  function tell(entry, done, text) {
    planned.set(entry.id, { done, text });
    context.say?.(text);
  }

  function conflict(change, mine) {
    const { theirs } = change;
    const choose = (choice, key) => h('button', { type: 'button', onclick: () => settle(change, choice) }, t(key));
    return h(
      'li',
      { class: 'entry conflict', dataset: { entry: change.id } },
      h('p', { class: 'note caution' }, icon('warning'), h('span', null, t('journal.conflict'))),
      h(
        'div',
        { class: 'pair' },
        h('div', null, h('h3', null, t('journal.mine')), mine),
        h(
          'div',
          null,
          h('h3', null, t('journal.theirs')),
          h('div', { class: 'quiet' }, dayText(theirs.day), theirs.author ? `, ${theirs.author}` : null),
          theirs.deleted ? h('p', null, t('journal.deleted-there')) : h('div', null, words(theirs)),
        ),
      ),
      h('div', { class: 'row' }, choose('mine', 'journal.keep-mine'), choose('theirs', 'journal.keep-theirs'), choose('both', 'journal.keep-both')),
    );
  }

  function content(entry) {
    const { id, day, kind, subjectKind, subject, amount, note } = entry;
    const sent = amount && typeof amount === 'object' ? { value: amount.value, kind: amount.kind } : amount;
    return { id, day, kind, subjectKind, subject, note: note ?? '', ...(sent ? { amount: sent } : {}) };
  }

  async function remove(entry, change) {
    // One that was never sent may be under way, so the server is told of its end too.
    await write(context.siteId, content(entry), { base: entry.revision ?? change?.baseRevision ?? 0, deleted: true, photo: null });
    context.say?.(t('journal.deleted'));
  }

  function edit(entry, change, picture) {
    showForm(entry, change, picture);
    formPlace.querySelector('select, input')?.focus();
  }

  function showForm(entry, change, picture) {
    form?.photo?.forget();
    if (readOnly) {
      replace(formPlace, h('p', { class: 'note' }, t('journal.read-only')));
      return;
    }
    const kinds = Object.keys(KINDS).filter((one) => KINDS[one].about.includes(entry?.subjectKind ?? about.subjectKind));
    const kind = field({
      label: t('journal.what'),
      control: h('select', { value: entry?.kind ?? kinds[0], onchange: () => adapt() }, kinds.map((one) => h('option', { value: one }, kindText(one)))),
    });
    const where = field({
      label: t('journal.where'),
      control: h(
        'select',
        { value: entry?.subjectKind === 'zone' ? entry.subject : '' },
        h('option', { value: '' }, t('journal.everywhere')),
        (about.zones ?? []).map((zone) => h('option', { value: zone.id }, zone.name)),
      ),
    });
    const day = field({ label: t('journal.day'), control: h('input', { type: 'date', value: entry?.day ?? today(), max: today() }) });
    const number = h('input', { inputmode: 'decimal', autocomplete: 'off' });
    const unit = h('select', { 'aria-label': t('journal.unit') });
    const amount = field({ label: t('journal.amount'), control: number });
    const together = h('div', { class: 'with-unit' });
    number.replaceWith(together);
    together.append(number, unit);
    const note = field({ label: t('journal.note'), control: h('textarea', { rows: '2', maxlength: '4000' }, entry?.note ?? '') });
    const picked = photoField(entry && addressOf(entry, picture));
    const saved = h('p', { class: 'saved', role: 'status' });

    function adapt() {
      const units = unitsOf(kind.control.value, metric);
      amount.hidden = units.length === 0;
      where.hidden = !about.zones?.length || !KINDS[kind.control.value].about.includes('zone') || (entry && !['site', 'zone'].includes(entry.subjectKind));
      replace(unit, units.map((one) => h('option', { value: one.unit }, one.unit)));
      amount.problem('');
      note.problem('');
    }

    function place() {
      if (where.hidden) {
        return { subjectKind: entry?.subjectKind ?? about.subjectKind, subject: entry?.subject ?? about.subject };
      }
      const zone = where.control.value;
      return { subjectKind: zone ? 'zone' : 'site', subject: zone };
    }

    /** What is to become of the photo, as `write` takes it. */
    async function photoWanted() {
      const choice = picked.choice();
      if (choice === undefined) {
        return undefined;
      }
      const replaces = entry?.photo?.path;
      return choice ? { blob: await choice, replaces } : replaces ? { replaces } : null;
    }

    async function submit(event) {
      event.preventDefault();
      const about1 = KINDS[kind.control.value];
      const value = numberOf(number.value);
      const wants = about1.amounts.length > 0;
      const typed = number.value.trim() !== '';
      const wrongNumber = wants && (typed ? !(value >= 0) : about1.needed);
      amount.problem(wrongNumber ? t(typed ? 'journal.bad-amount' : 'journal.need-amount') : '');
      const wrongNote = about1.noted && !note.control.value.trim();
      note.problem(wrongNote ? t('journal.need-note') : '');
      day.problem(day.control.value ? '' : t('journal.need-day'));
      if (wrongNumber || wrongNote || !day.control.value) {
        form.querySelector('[aria-invalid="true"]')?.focus();
        return;
      }
      let wanted;
      try {
        wanted = await photoWanted();
      } catch {
        // The field says what is wrong with the file.
        return;
      }
      const written = {
        id: entry?.id ?? newId(),
        day: day.control.value,
        kind: kind.control.value,
        ...place(),
        note: note.control.value.trim(),
        ...(wants && typed ? { amount: `${value} ${unit.value}` } : {}),
      };
      let outcome;
      try {
        outcome = await write(context.siteId, written, { base: entry?.revision ?? change?.baseRevision ?? 0, photo: wanted });
      } catch (problem) {
        console.error(problem);
        saved.textContent = t('journal.not-kept');
        return;
      }
      showForm();
      formPlace.querySelector('.saved').textContent = t(outcome === 'done' ? 'journal.saved' : outcome === 'forbidden' ? 'journal.forbidden' : 'journal.kept');
    }

    form = h(
      'form',
      { class: 'journal-form', novalidate: true, onsubmit: submit },
      h('div', { class: 'pair' }, kind, day),
      where,
      amount,
      note,
      picked,
      h(
        'div',
        { class: 'row' },
        h('button', { type: 'submit', class: 'primary' }, icon('check'), t(entry ? 'journal.save-change' : 'journal.save')),
        entry ? h('button', { type: 'button', onclick: () => showForm() }, t('journal.cancel')) : null,
      ),
      saved,
    );
    form.photo = picked;
    replace(formPlace, form);
    adapt();
    if (entry?.amount) {
      fillAmount(entry.amount, number, unit);
    }
  }

  function fillAmount(amount, number, unit) {
    const text = amountText(amount, metric).split(/[\s\u00a0]/);
    number.value = text[0];
    if ([...unit.options].some((option) => option.value === text[1])) {
      unit.value = text[1];
    }
  }

  const ended = onChange(() => draw());
  showForm();
  draw();
  sync(context.siteId);
  return element;
}
