// The guided first plan: a few questions, how to find each answer, and what is assumed without it.
import { add, h, replace } from '../dom.js';
import { choices, field, numberOf } from '../forms.js';
import { icon } from '../icons.js';
import { sketch } from './sketch.js';

const KEPT = 'grovewright.start';
const MONTHS = 12;
const CLIMATES = ['dry-summer', 'warm-wet-summer', 'cool-wet', 'cold-winter', 'dry', 'wet-and-dry'];
const CURRENCIES = ['USD', 'EUR', 'GBP', 'AUD', 'NZD', 'CAD', 'MXN', 'ARS', 'CLP', 'COP', 'PEN', 'BRL', 'ZAR', 'INR', 'JPY', 'CHF'];
const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** The steps with the answers that each asks for, so that a problem is shown where it can be mended. */
const STEPS = [
  { key: 'place', fields: ['units', 'name', 'latitude', 'longitude', 'half', 'elevation', 'climate', 'tmin', 'tmax', 'rain'] },
  { key: 'land', fields: ['shape', 'width', 'length', 'corners', 'north', 'slope', 'slopeRise', 'slopeRun'] },
  { key: 'water', fields: ['supply', 'tapX', 'tapY', 'pressure', 'bucketVolume', 'bucketSeconds', 'tankLevel', 'tankVolume', 'waterDays'] },
  { key: 'soil', fields: ['texture', 'sandLayer', 'siltLayer', 'clayLayer', 'depth', 'holeDrop', 'holeHours', 'ph'] },
  { key: 'plants', fields: ['plants', 'companion', 'planting'] },
  { key: 'work', fields: ['currency', 'times', 'people', 'days', 'from', 'until'] },
  { key: 'review', fields: [] },
];

/** The texture by the feel of a moist handful, after the flow chart that soil surveys use (from memory). */
function textureByFeel({ feelBall, feelRibbon, feelTouch }) {
  if (feelBall === 'no') {
    return 'sand';
  }
  if (feelRibbon === 'none') {
    return 'loamy-sand';
  }
  const kinds = {
    short: { gritty: 'sandy-loam', smooth: 'silt-loam', neither: 'loam' },
    medium: { gritty: 'sandy-clay-loam', smooth: 'silty-clay-loam', neither: 'clay-loam' },
    long: { gritty: 'sandy-clay', smooth: 'silty-clay', neither: 'clay' },
  };
  return kinds[feelRibbon]?.[feelTouch] ?? '';
}

function kept() {
  try {
    return JSON.parse(sessionStorage.getItem(KEPT)) ?? {};
  } catch {
    return {};
  }
}

export async function show(root, context) {
  const [species, textures] = await Promise.all([
    context.api.get('/catalogue/species'),
    context.api.get('/catalogue/textures'),
  ]);
  const wanted = context.query.get('step') ?? 'place';
  const index = Math.max(0, STEPS.findIndex((step) => step.key === wanted));
  new StartPage(root, context, { species, textures, index }).draw();
}

class StartPage {
  constructor(root, context, { species, textures, index }) {
    this.root = root;
    this.context = context;
    this.t = context.t;
    this.species = species;
    this.textures = textures;
    this.index = index;
    this.step = STEPS[index];
    this.answers = { units: context.me?.settings?.units || 'metric', shape: 'rectangle', plants: [{ species: '', count: '' }], ...kept() };
    this.fields = new Map();
  }

  keep() {
    try {
      sessionStorage.setItem(KEPT, JSON.stringify(this.answers));
    } catch {
      // Without storage the answers last as long as the page.
    }
  }

  set(key, value) {
    this.answers[key] = value;
    this.keep();
  }

  get us() {
    return this.answers.units === 'us';
  }

  /** What is sent: without the answers of ways of asking that were not taken. */
  payload() {
    const answers = { ...this.answers };
    const way = answers.soilWay ?? '';
    answers.texture = way === 'feel' ? textureByFeel(answers) : way === 'know' ? answers.texture ?? '' : '';
    if (way !== 'jar') {
      answers.sandLayer = answers.siltLayer = answers.clayLayer = '';
    }
    if (answers.slope === 'unknown') {
      answers.slope = '';
    }
    if (answers.climate === 'unknown') {
      answers.climate = '';
    }
    return answers;
  }

  // ---- Drawing ----

  draw() {
    const { t } = this;
    const { key } = this.step;
    const last = key === 'review';
    this.alert = h('div', { role: 'alert' });
    this.form = h(
      'form',
      {
        class: 'start-form',
        novalidate: true,
        onsubmit: (event) => {
          event.preventDefault();
          last ? this.create() : this.next();
        },
      },
      this[key](),
    );
    const back = this.index > 0 ? h('button', { type: 'button', onclick: () => this.to(this.index - 1) }, icon('back'), t('start.back')) : null;
    this.submit = h('button', { type: 'submit', class: 'primary' }, t(last ? 'start.make' : 'start.next'), icon(last ? 'check' : 'next'));
    add(this.form, this.alert, h('div', { class: 'start-buttons' }, back, this.submit));
    replace(
      this.root,
      h(
        'div',
        { class: 'page narrow start' },
        h(
          'ol',
          { class: 'start-steps', 'aria-label': t('start.steps') },
          STEPS.map((step, i) =>
            h(
              'li',
              { class: i < this.index ? 'past' : '', 'aria-current': i === this.index ? 'step' : null },
              i < this.index
                ? h('a', { href: `/start?step=${step.key}` }, h('span', { class: 'hidden-text' }, t(`start.step.${step.key}`)))
                : h('span', { class: 'hidden-text' }, t(`start.step.${step.key}`)),
            ),
          ),
        ),
        h('p', { class: 'quiet step-count' }, t('start.stepOf', this.index + 1, STEPS.length)),
        h('h1', null, t(`start.${key}.title`)),
        h('p', { class: 'lead' }, t(`start.${key}.lead`)),
        this.form,
      ),
    );
  }

  to(index) {
    this.context.navigate(`/start?step=${STEPS[index].key}`);
  }

  redraw() {
    const focused = document.activeElement?.id;
    replace(this.form, this[this.step.key]());
    add(this.form, this.alert, h('div', { class: 'start-buttons' }, this.index > 0 ? h('button', { type: 'button', onclick: () => this.to(this.index - 1) }, icon('back'), this.t('start.back')) : null, this.submit));
    if (focused) {
      document.getElementById(focused)?.focus();
    }
  }

  /** A field of text whose answer is kept as it is typed. */
  text(key, { unit, help, optional = true, type = 'text', inputmode, after, placeholder, label } = {}) {
    const control = h('input', {
      id: `start-${key}`,
      type,
      inputmode: inputmode ?? (type === 'text' ? 'decimal' : undefined),
      autocomplete: 'off',
      placeholder,
      value: this.answers[key] ?? '',
      oninput: () => {
        this.set(key, control.value);
        element.problem(undefined);
        after?.();
      },
    });
    const element = field({
      label: label ?? this.t(`start.field.${key}`),
      optional: optional ? this.t('map.optional') : undefined,
      help: help ?? undefined,
      unit,
      control,
    });
    this.fields.set(key, element);
    return element;
  }

  radio(key, values, { redraw = true, help, helps = true } = {}) {
    const element = choices({
      legend: this.t(`start.field.${key}`),
      help,
      name: key,
      value: this.answers[key],
      choices: values.map((value) => {
        const more = helps ? this.t(`start.${key}.${value}.help`) : '';
        return { value, label: this.t(`start.${key}.${value}`), help: more === `start.${key}.${value}.help` ? undefined : more };
      }),
      onchange: (value) => {
        this.set(key, value);
        if (redraw) {
          this.redraw();
          this.form.querySelector(`input[name="${key}"]:checked`)?.focus();
        }
      },
    });
    this.fields.set(key, element);
    return element;
  }

  /** How to find something out, folded away until it is wanted. */
  how(key, { open = false } = {}) {
    const { t } = this;
    const steps = t(`start.how.${key}`).split(' | ');
    return h(
      'details',
      { class: 'how', open },
      h('summary', null, t(`start.how.${key}.title`)),
      steps.length > 1 ? h('ol', null, steps.map((one) => h('li', null, one))) : h('p', null, steps[0]),
    );
  }

  skip(key) {
    return h('div', { class: 'note' }, icon('info'), h('p', null, this.t(`start.skip.${key}`)));
  }

  // ---- The steps ----

  place() {
    const { t } = this;
    const own = this.answers.climate === 'months';
    return [
      this.text('name', { optional: false, inputmode: 'text' }),
      this.radio('units', ['metric', 'us'], { helps: false }),
      h('h2', null, t('start.where')),
      h('p', { class: 'help' }, t('start.whereHelp')),
      h('div', { class: 'pair' }, this.text('latitude', { unit: '°' }), this.text('longitude', { unit: '°' })),
      'geolocation' in navigator
        ? h('p', null, h('button', { type: 'button', onclick: () => this.locate() }, icon('fit'), t('start.here')))
        : null,
      this.located ?? null,
      this.text('elevation', { unit: this.us ? 'ft' : 'm', help: t('start.help.elevation') }),
      !String(this.answers.latitude ?? '').trim() ? this.radio('half', ['north', 'south'], { redraw: false, helps: false }) : null,
      h('h2', null, t('start.weather')),
      this.radio('climate', [...CLIMATES, 'months', 'unknown'], { help: t('start.help.climate') }),
      own ? this.months() : null,
    ];
  }

  months() {
    const { t } = this;
    const format = new Intl.DateTimeFormat(document.documentElement.lang, { month: 'long', timeZone: 'UTC' });
    const columns = ['tmin', 'tmax', 'rain'];
    const units = { tmin: this.us ? '°F' : '°C', tmax: this.us ? '°F' : '°C', rain: this.us ? 'in' : 'mm' };
    const error = h('p', { class: 'error', role: 'alert' });
    const table = h(
      'table',
      { class: 'months' },
      h('thead', null, h('tr', null, h('th', { scope: 'col' }, t('start.month')), columns.map((key) => h('th', { scope: 'col' }, `${t(`start.field.${key}`)} (${units[key]})`)))),
      h(
        'tbody',
        null,
        Array.from({ length: MONTHS }, (_, i) => {
          const month = format.format(new Date(Date.UTC(2027, i, 15)));
          return h(
            'tr',
            null,
            h('th', { scope: 'row' }, month),
            columns.map((key) => {
              const control = h('input', {
                inputmode: 'decimal',
                'aria-label': `${t(`start.field.${key}`)}, ${month}`,
                value: this.answers[key]?.[i] ?? '',
                oninput: () => {
                  const values = Array.from({ length: MONTHS }, (__, j) => this.answers[key]?.[j] ?? '');
                  values[i] = control.value;
                  this.set(key, values);
                  control.removeAttribute('aria-invalid');
                },
              });
              const element = { control, problem: (text) => this.cellProblem(control, error, text) };
              this.fields.set(`${key}[${i}]`, element);
              if (i === 0) {
                this.fields.set(key, element);
              }
              return h('td', null, control);
            }),
          );
        }),
      ),
    );
    return h('div', null, h('p', { class: 'help' }, t('start.help.months')), h('div', { class: 'scroll' }, table), error);
  }

  cellProblem(control, error, text) {
    if (text) {
      control.setAttribute('aria-invalid', 'true');
      replace(error, icon('warning'), h('span', null, text));
    } else {
      control.removeAttribute('aria-invalid');
      replace(error);
    }
  }

  locate() {
    const { t } = this;
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        this.set('latitude', coords.latitude.toFixed(3));
        this.set('longitude', coords.longitude.toFixed(3));
        if (coords.altitude !== null) {
          this.set('elevation', String(Math.round(coords.altitude / (this.us ? 0.3048 : 1))));
        }
        this.redraw();
        this.context.say(t('start.found'));
      },
      () => {
        this.located = h('p', { class: 'help', role: 'status' }, t('start.notFound'));
        this.redraw();
      },
      { timeout: 8000 },
    );
  }

  corners() {
    if (this.answers.shape === 'corners') {
      return (this.answers.corners ?? []).map(([x, y]) => [numberOf(x), numberOf(y)]).filter((p) => p.every(Number.isFinite));
    }
    const [width, length] = [numberOf(this.answers.width), numberOf(this.answers.length)];
    return width > 0 && length > 0 ? [[0, 0], [width, 0], [width, length], [0, length]] : [];
  }

  sketch(more = {}) {
    const { t } = this;
    const unit = this.us ? 'ft' : 'm';
    const corners = this.corners();
    const tap = [numberOf(this.answers.tapX), numberOf(this.answers.tapY)];
    return sketch({
      corners,
      tap: tap.every(Number.isFinite) ? tap : undefined,
      north: numberOf(this.answers.north) || 0,
      higher: this.answers.slope,
      unit,
      label: corners.length > 2 ? t('start.sketch', corners.length) : t('start.sketchEmpty'),
      ...more,
    });
  }

  land() {
    const { t } = this;
    const unit = this.us ? 'ft' : 'm';
    const own = this.answers.shape === 'corners';
    const box = h('div');
    const refresh = () =>
      replace(
        box,
        this.sketch(
          own
            ? {
                onplace: ([x, y]) => {
                  this.set('corners', [...(this.answers.corners ?? []), [String(x), String(y)]]);
                  this.redraw();
                },
              }
            : {},
        ),
      );
    refresh();
    return [
      this.radio('shape', ['rectangle', 'corners']),
      own
        ? this.cornerFields(refresh, unit)
        : h('div', { class: 'pair' }, this.text('width', { unit, optional: false, after: refresh }), this.text('length', { unit, optional: false, after: refresh })),
      this.how('outline'),
      box,
      this.text('north', { unit: '°', help: t('start.help.north'), after: refresh }),
      h('h2', null, t('start.slopes')),
      this.radio('slope', ['level', 'top', 'bottom', 'left', 'right', 'unknown'], { helps: false }),
      ['top', 'bottom', 'left', 'right'].includes(this.answers.slope)
        ? h('div', { class: 'pair' }, this.text('slopeRise', { unit, optional: false }), this.text('slopeRun', { unit, optional: false }))
        : null,
      this.how('slope'),
    ];
  }

  cornerFields(refresh, unit) {
    const { t } = this;
    const corners = this.answers.corners ?? [];
    const error = h('p', { class: 'error', role: 'alert' });
    this.fields.set('corners', {
      control: undefined,
      problem: (text) => replace(error, text ? [icon('warning'), h('span', null, text)] : []),
    });
    const list = corners.map((corner, i) => {
      const inputs = [0, 1].map((axis) =>
        h('input', {
          inputmode: 'decimal',
          'aria-label': t(axis === 0 ? 'start.cornerX' : 'start.cornerY', i + 1),
          value: corner[axis],
          oninput: (event) => {
            const next = corners.map((p) => [...p]);
            next[i][axis] = event.target.value;
            corners[i][axis] = event.target.value;
            this.set('corners', next);
            refresh();
          },
        }),
      );
      this.fields.set(`corners[${i}]`, { control: inputs[0], problem: (text) => this.cellProblem(inputs[0], error, text) });
      return h(
        'li',
        null,
        inputs,
        h('span', { class: 'unit' }, unit),
        h(
          'button',
          {
            type: 'button',
            class: 'square',
            'aria-label': t('start.removeCorner', i + 1),
            onclick: () => {
              this.set('corners', corners.filter((_, j) => j !== i));
              this.redraw();
            },
          },
          icon('remove'),
        ),
      );
    });
    return h(
      'div',
      null,
      h('p', { class: 'help' }, t('start.help.corners')),
      h('ol', { class: 'corner-list' }, list),
      error,
      h(
        'button',
        {
          type: 'button',
          onclick: () => {
            this.set('corners', [...corners, ['', '']]);
            this.redraw();
            this.form.querySelector('.corner-list li:last-child input')?.focus();
          },
        },
        icon('add'),
        t('start.addCorner'),
      ),
    );
  }

  water() {
    const { t } = this;
    const unit = this.us ? 'ft' : 'm';
    const tank = this.answers.supply === 'gravity-tank';
    const box = h('div');
    const refresh = () =>
      replace(
        box,
        this.sketch({
          onplace: ([x, y]) => {
            this.set('tapX', String(x));
            this.set('tapY', String(y));
            this.redraw();
          },
        }),
      );
    if (this.corners().length > 2) {
      refresh();
    }
    return [
      this.radio('supply', ['house-tap', 'well-pump', 'gravity-tank']),
      h('h2', null, t('start.tapWhere')),
      h('p', { class: 'help' }, t('start.help.tap')),
      box,
      h('div', { class: 'pair' }, this.text('tapX', { unit, after: refresh }), this.text('tapY', { unit, after: refresh })),
      tank
        ? [
            h('h2', null, t('start.tank')),
            h('div', { class: 'pair' }, this.text('tankLevel', { unit }), this.text('tankVolume', { unit: this.us ? 'gal' : 'L' })),
            this.how('tank'),
            this.skip('tank'),
          ]
        : [
            h('h2', null, t('start.bucket')),
            this.how('bucket', { open: true }),
            h('div', { class: 'pair' }, this.text('bucketVolume', { unit: this.us ? 'gal' : 'L' }), this.text('bucketSeconds', { unit: 's' })),
            this.text('pressure', { unit: this.us ? 'psi' : 'bar', help: t('start.help.pressure') }),
            this.skip('bucket'),
          ],
      this.dayBoxes('waterDays', t('start.help.waterDays')),
    ];
  }

  /** A box for each day of the week; none need be ticked. */
  dayBoxes(key, help) {
    const { t } = this;
    const chosen = this.answers[key] ?? [];
    const format = new Intl.DateTimeFormat(document.documentElement.lang, { weekday: 'long', timeZone: 'UTC' });
    return h(
      'fieldset',
      null,
      h('legend', null, t(`start.field.${key}`), h('span', { class: 'optional' }, ` (${t('map.optional')})`)),
      help ? h('p', { class: 'help' }, help) : null,
      h(
        'div',
        { class: 'day-list' },
        DAYS.map((day, i) =>
          h(
            'label',
            { class: 'choice' },
            h('input', {
              type: 'checkbox',
              checked: chosen.includes(day),
              onchange: (event) => {
                const now = new Set(this.answers[key] ?? []);
                event.target.checked ? now.add(day) : now.delete(day);
                this.set(key, DAYS.filter((one) => now.has(one)));
              },
            }),
            format.format(new Date(Date.UTC(2027, 0, 4 + i))),
          ),
        ),
      ),
    );
  }

  soil() {
    const { t } = this;
    const way = this.answers.soilWay;
    const found = textureByFeel(this.answers);
    const small = this.us ? 'in' : 'cm';
    return [
      this.radio('soilWay', ['feel', 'jar', 'know', 'skip']),
      way === 'feel'
        ? h(
            'div',
            { class: 'card stack feel' },
            this.how('feel', { open: true }),
            this.radio('feelBall', ['yes', 'no'], { helps: false }),
            this.answers.feelBall === 'yes' ? this.radio('feelRibbon', ['none', 'short', 'medium', 'long'], { helps: false }) : null,
            this.answers.feelBall === 'yes' && ['short', 'medium', 'long'].includes(this.answers.feelRibbon)
              ? this.radio('feelTouch', ['gritty', 'smooth', 'neither'], { helps: false })
              : null,
            found ? h('div', { class: 'note good', role: 'status' }, icon('check'), h('p', null, t('start.feelIs', this.textureName(found)))) : null,
          )
        : null,
      way === 'jar'
        ? h(
            'div',
            { class: 'card' },
            this.how('jar', { open: true }),
            h('div', { class: 'pair' }, this.text('sandLayer', { unit: 'mm', optional: false }), this.text('siltLayer', { unit: 'mm', optional: false }), this.text('clayLayer', { unit: 'mm', optional: false })),
          )
        : null,
      way === 'know' ? this.select('texture', [['', t('map.choose')], ...this.textures.map((one) => [one.key, this.textureName(one.key)])], { optional: false }) : null,
      way === 'skip' ? this.skip('texture') : null,
      h('h2', null, t('start.hole')),
      this.how('hole'),
      h('div', { class: 'pair' }, this.text('holeDrop', { unit: small }), this.text('holeHours', { unit: 'h' })),
      h('div', { class: 'pair' }, this.text('depth', { unit: small, help: t('start.help.depth') }), this.text('ph', { help: t('start.help.ph') })),
      this.skip('hole'),
    ];
  }

  textureName(key) {
    return this.t(`start.texture.${key}`);
  }

  select(key, options, { optional = true, help } = {}) {
    const control = h(
      'select',
      {
        id: `start-${key}`,
        value: this.answers[key] ?? '',
        onchange: () => {
          this.set(key, control.value);
          element.problem(undefined);
          if (key === 'currency') {
            this.redraw();
          }
        },
      },
      options.map(([value, label]) => h('option', { value }, label)),
    );
    control.value = this.answers[key] ?? '';
    const element = field({ label: this.t(`start.field.${key}`), optional: optional ? this.t('map.optional') : undefined, help, control });
    this.fields.set(key, element);
    return element;
  }

  plants() {
    const { t } = this;
    const rows = this.answers.plants?.length > 0 ? this.answers.plants : [{ species: '', count: '' }];
    const error = h('p', { class: 'error', role: 'alert' });
    this.fields.set('plants', { control: undefined, problem: (text) => replace(error, text ? [icon('warning'), h('span', null, text)] : []) });
    const main = this.species.filter((one) => one.role === 'main');
    const companions = this.species.filter((one) => one.role !== 'main');
    const unit = this.us ? 'ft' : 'm';
    const length = (metres) => `${Math.round((metres / (this.us ? 0.3048 : 1)) * 10) / 10} ${unit}`;
    const put = (i, key, value) => {
      this.set('plants', rows.map((row, j) => (j === i ? { ...row, [key]: value } : row)));
      rows[i][key] = value;
    };
    const roomOf = (key) => {
      const chosen = this.species.find((one) => one.key === key);
      return chosen ? t('start.apart', length(chosen.spacing), length(chosen.matureHeight)) : '';
    };
    const list = rows.map((row, i) => {
      const select = h(
        'select',
        {
          id: `start-species-${i}`,
          onchange: () => {
            // The list itself stays: who types a name letter by letter changes it at every letter.
            put(i, 'species', select.value);
            what.problem(undefined);
            room.textContent = roomOf(select.value);
          },
        },
        h('option', { value: '' }, t('map.choose')),
        [...new Set(main.map((one) => one.group))].map((group) =>
          h('optgroup', { label: t(`map.group.${group}`) }, main.filter((one) => one.group === group).map((one) => h('option', { value: one.key }, one.name))),
        ),
      );
      select.value = row.species;
      const room = h('span', null, roomOf(row.species));
      const count = h('input', { id: `start-count-${i}`, inputmode: 'numeric', autocomplete: 'off', value: row.count, oninput: () => { put(i, 'count', count.value); number.problem(undefined); } });
      const what = field({ label: t('start.what', i + 1), help: room, control: select });
      const number = field({ label: t('start.howMany', i + 1), control: count });
      this.fields.set(`plants[${i}].species`, what);
      this.fields.set(`plants[${i}].count`, number);
      return h(
        'li',
        null,
        what,
        number,
        rows.length > 1
          ? h(
              'button',
              { type: 'button', class: 'square', 'aria-label': t('start.removePlant', i + 1), onclick: () => { this.set('plants', rows.filter((_, j) => j !== i)); this.redraw(); } },
              icon('remove'),
            )
          : null,
      );
    });
    return [
      h('ol', { class: 'wish-list' }, list),
      h(
        'p',
        null,
        h(
          'button',
          {
            type: 'button',
            onclick: () => {
              this.set('plants', [...rows, { species: '', count: '' }]);
              this.redraw();
              document.getElementById(`start-species-${rows.length}`)?.focus();
            },
          },
          icon('add'),
          t('start.addPlant'),
        ),
      ),
      error,
      h('div', { class: 'note' }, icon('info'), h('p', null, t('start.rowsHelp'))),
      this.select('companion', [['', t('start.noCompanion')], ...companions.map((one) => [one.key, one.name])], { help: t('start.help.companion') }),
      this.text('planting', { type: 'date', help: t('start.help.planting') }),
    ];
  }

  work() {
    const { t } = this;
    return [
      this.select('currency', [['', t('start.noCurrency')], ...CURRENCIES.map((code) => [code, code])], { help: t('start.help.currency') }),
      this.answers.currency && this.answers.currency !== 'USD' ? this.text('times', { help: t('start.help.times', this.answers.currency) }) : null,
      this.text('people', { inputmode: 'numeric' }),
      this.dayBoxes('days'),
      h('div', { class: 'pair' }, this.text('from', { type: 'time' }), this.text('until', { type: 'time' })),
    ];
  }

  review() {
    const { t } = this;
    const box = h('div', { class: 'stack', 'aria-live': 'polite' }, h('p', null, t('start.looking')));
    this.lookThrough(box);
    return box;
  }

  async lookThrough(box) {
    const { t } = this;
    try {
      this.draft = await this.context.api.ask('/start', this.payload());
    } catch (problem) {
      replace(box, h('div', { class: 'note bad', role: 'alert' }, icon('warning'), h('p', null, this.words(problem))));
      return;
    }
    const { problems, assumptions, rows } = this.draft;
    this.submit.disabled = problems.length > 0;
    const names = new Map(this.species.map((one) => [one.key, one.name]));
    const stepOf = (name) => STEPS.find((step) => step.fields.includes(name.replace(/[[.].*$/, ''))) ?? STEPS[4];
    const remark = (one, kind) =>
      h(
        'li',
        null,
        h('span', null, this.remarkText(one, kind)),
        h('a', { href: `/start?step=${stepOf(one.field).key}` }, t('start.change'), h('span', { class: 'hidden-text' }, `: ${t(`start.step.${stepOf(one.field).key}`)}`)),
      );
    replace(
      box,
      problems.length > 0
        ? h('section', { class: 'note bad' }, icon('warning'), h('div', null, h('h2', null, t('start.wrong')), h('ul', { class: 'remarks' }, problems.map((one) => remark(one, 'problem')))))
        : null,
      rows.length > 0 && problems.length === 0
        ? h(
            'section',
            { class: 'card' },
            h('h2', null, t('start.rows')),
            h(
              'ul',
              null,
              rows.map((row) => h('li', null, `${t('map.row', row.id)}: ${Object.entries(row.plants).map(([key, count]) => `${count} × ${names.get(key) ?? key}`).join(', ')}`)),
            ),
          )
        : null,
      assumptions.length > 0
        ? h('section', { class: 'card' }, h('h2', null, t('start.assumptions')), h('p', { class: 'help' }, t('start.assumptionsHelp')), h('ul', { class: 'remarks' }, assumptions.map((one) => remark(one, 'assumed'))))
        : problems.length === 0
          ? h('div', { class: 'note good' }, icon('check'), h('p', null, t('start.nothingAssumed')))
          : null,
    );
  }

  // ---- Going on ----

  remarkText({ code, field: name, values }, kind) {
    const shown = code === 'climate' ? values.map((value) => this.t(`start.climate.${value}`)) : code === 'texture' ? values.map((value) => this.textureName(value)) : values;
    const text = this.t(`start.${kind}.${code}`, ...shown);
    const label = this.t(`start.field.${name.replace(/\[\d+\]/g, '').replace('plants.', '')}`);
    return kind === 'problem' && !label.startsWith('start.') ? `${label}: ${text}` : text;
  }

  words(problem) {
    return problem.status === 0 ? this.t('shell.unreachable') : problem.message;
  }

  /** Shows the problems of this step beside their fields; true if there are none. */
  showProblems(problems) {
    this.fields.forEach((element) => element.problem(undefined));
    const mine = problems.filter((one) => this.step.fields.includes(one.field.replace(/[[.].*$/, '')));
    for (const one of mine) {
      const element = this.fields.get(one.field) ?? this.fields.get(one.field.replace(/[[.].*$/, ''));
      element?.problem(this.t(`start.problem.${one.code}`, ...one.values));
    }
    if (mine.length > 0) {
      const first = this.fields.get(mine[0].field)?.control ?? this.form.querySelector('[aria-invalid="true"]');
      first?.focus();
      this.context.say(this.t('start.mend', mine.length));
    }
    return mine.length === 0;
  }

  async next() {
    this.submit.disabled = true;
    try {
      const { problems } = await this.context.api.ask('/start', this.payload());
      // What a later step asks for cannot be wrong yet: nobody was asked.
      if (this.showProblems(problems)) {
        this.to(this.index + 1);
      }
    } catch (problem) {
      replace(this.alert, h('div', { class: 'note bad' }, icon('warning'), h('p', null, this.words(problem))));
    } finally {
      this.submit.disabled = false;
    }
  }

  async create() {
    if (!this.draft?.description) {
      return;
    }
    this.submit.disabled = true;
    try {
      const state = await this.context.api.post('/sites', { name: this.answers.name.trim(), description: this.draft.description });
      sessionStorage.removeItem(KEPT);
      this.context.navigate(`/site/${encodeURIComponent(state.id)}/map`);
    } catch (problem) {
      this.submit.disabled = false;
      replace(this.alert, h('div', { class: 'note bad' }, icon('warning'), h('p', null, this.words(problem))));
    }
  }
}
