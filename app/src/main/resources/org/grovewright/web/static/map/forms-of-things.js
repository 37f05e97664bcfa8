// The forms of the side panel: what can be typed about each thing. Each calls `save(label, operations)`.
import { h } from '../dom.js';
import { choices, field } from '../forms.js';
import { writtenPlace } from './units.js';

export const FIXTURE_KINDS = [
  'building', 'paving', 'gravel', 'lawn', 'fence', 'wall', 'tank', 'well', 'septic-field', 'existing-tree', 'buried-service',
];

const SURFACES = ['paving', 'gravel', 'lawn'];

/** A field for a length or place, in the owner's unit, that checks what was typed. */
function lengthField({ t, lengths }, label, metres, { optional, min = -Infinity, max = Infinity, help } = {}) {
  const control = h('input', { inputmode: 'decimal', autocomplete: 'off', value: metres === undefined || metres === null ? '' : lengths.field(metres) });
  const element = field({ label, help, unit: lengths.unit, optional: optional ? t('map.optional') : undefined, control });
  element.read = () => {
    const empty = control.value.trim() === '';
    const value = lengths.metres(control.value);
    const number = Number.isFinite(value);
    const wrong = empty ? !optional : !number || value < min || value > max;
    const bounds = number && Number.isFinite(max) ? t('map.problem.bounds', lengths.text(min), lengths.text(max)) : t('map.problem.length', lengths.unit);
    element.problem(wrong ? bounds : undefined);
    return wrong ? NaN : empty ? undefined : value;
  };
  return element;
}

function textField(label, value, { help, optional, type = 'text' } = {}) {
  const control = h('input', { type, value: value ?? '', autocomplete: 'off' });
  return field({ label, help, optional, control });
}

function selectField(label, value, options, { help } = {}) {
  const control = h(
    'select',
    { value },
    options.map((one) => h('option', { value: one.value, selected: one.value === value }, one.label)),
  );
  return field({ label, help, control });
}

/** Points as text: one place a line, right and up. */
function pointsField({ t, lengths }, label, points, least) {
  const control = h('textarea', {
    rows: Math.min(10, Math.max(4, points.length + 1)),
    spellcheck: 'false',
    value: points.map(([x, y]) => `${lengths.field(x)}; ${lengths.field(y)}`).join('\n'),
  });
  const element = field({ label, help: t('map.points.help', lengths.unit), control });
  element.read = () => {
    const lines = control.value.split('\n').map((line) => line.trim()).filter(Boolean);
    const read = lines.map((line) => line.split(/\s*;\s*|\s+/).filter(Boolean).map((one) => lengths.metres(one)));
    const bad = read.findIndex((pair) => pair.length !== 2 || pair.some((value) => !Number.isFinite(value)));
    const wrong = bad >= 0 ? t('map.points.bad', bad + 1) : read.length < least ? t('map.points.few', least) : undefined;
    element.problem(wrong);
    return wrong ? undefined : read;
  };
  return element;
}

function firstWrong(form) {
  form.querySelector('[aria-invalid="true"]')?.focus();
}

function form(context, { title, fields, submit, onsubmit, more }) {
  const element = h(
    'form',
    {
      novalidate: true,
      onsubmit: (event) => {
        event.preventDefault();
        if (onsubmit() === false) {
          firstWrong(element);
        }
      },
    },
    h('h2', { tabindex: '-1' }, title),
    fields,
    context.readOnly
      ? null
      : h('div', { class: 'row' }, submit ? h('button', { type: 'submit', class: 'primary' }, submit) : null, more),
  );
  if (context.readOnly) {
    element.querySelectorAll('input, select, textarea').forEach((control) => control.setAttribute('disabled', ''));
  }
  return element;
}

function speciesOptions(species, t) {
  const groups = new Map();
  species.forEach((one) => {
    const list = groups.get(one.group) ?? [];
    list.push(one);
    groups.set(one.group, list);
  });
  return [...groups].map(([group, list]) =>
    h(
      'optgroup',
      { label: t(`map.group.${group}`) },
      [...list].sort((a, b) => a.name.localeCompare(b.name)).map((one) => h('option', { value: one.key }, one.name)),
    ),
  );
}

/** A select of all species by group. */
export function speciesField({ t, species }, value, onchange) {
  const control = h('select', { value: value ?? '', onchange }, h('option', { value: '' }, t('map.choose')), speciesOptions(species, t));
  control.value = value ?? '';
  return field({ label: t('map.field.species'), control });
}

function plantFields(context, plant) {
  const { t } = context;
  const x = lengthField(context, t('map.field.x'), plant?.x);
  const y = lengthField(context, t('map.field.y'), plant?.y);
  return { x, y, both: h('div', { class: 'pair' }, x, y) };
}

/** What the owner has measured of a plant; the limits are those of the description. */
function measuredFields(context, plant, planted) {
  const { t, lengths } = context;
  const spread = lengthField(context, t('map.field.measuredSpread'), plant.measuredSpread, { optional: true, min: 0.02, max: 40 });
  const height = lengthField(context, t('map.field.measuredHeight'), plant.measuredHeight, { optional: true, min: 0.02, max: 60 });
  const day = textField(t('map.field.measuredOn'), plant.measuredOn, { type: 'date', optional: t('map.optional'), help: t('map.field.measuredOnHelp') });
  return {
    all: [h('div', { class: 'pair' }, height, spread), day],
    /** The changes of the plant's fields, or undefined where something is wrong. */
    read() {
      const sizes = [
        ['measured_height', height, plant.measuredHeight],
        ['measured_spread', spread, plant.measuredSpread],
      ].map(([key, one, had]) => ({ key, had, now: one.read() }));
      const on = day.control.value;
      const before = on && planted.control.value && on < planted.control.value;
      const alone = on && sizes.every(({ now }) => now === undefined);
      day.problem(before ? t('map.problem.measuredEarly') : alone ? t('map.problem.measuredNothing') : undefined);
      if (before || alone || sizes.some(({ now }) => Number.isNaN(now))) {
        return undefined;
      }
      const fields = {};
      sizes.forEach(({ key, had, now }) => {
        if (now === undefined ? had != null : had == null || lengths.written(now) !== lengths.written(had)) {
          fields[key] = now === undefined ? null : lengths.written(now);
        }
      });
      if (on !== (plant.measuredOn ?? '')) {
        fields.measured_on = on || null;
      }
      return fields;
    },
  };
}

export function plantForm(context, plant) {
  const { t, save, lengths, scene } = context;
  const place = plantFields(context, plant);
  const species = speciesField(context, plant.species);
  const cultivar = textField(t('map.field.cultivar'), plant.cultivar, { optional: t('map.optional') });
  const planted = textField(t('map.field.planted'), plant.plantedOn, { type: 'date' });
  const measured = measuredFields(context, plant, planted);
  const companion = !plant.movable;
  return form(context, {
    title: `${plant.id}: ${plant.speciesName}`,
    fields: companion
      ? [h('p', { class: 'help' }, t('map.companion', plant.row ?? ''))]
      : [
          h('p', { class: 'help' }, plant.row ? t('map.inRow', plant.row) : t('map.onItsOwn')),
          place.both,
          species,
          cultivar,
          planted,
          measured.all,
          h(
            'p',
            { class: 'help' },
            t('map.crownNow', lengths.text(context.crown(plant)), lengths.text(plant.fullCrownDiameter)),
            plant.needLitresPerWeekPeak !== undefined ? ` ${t('map.needOf', context.water(plant.needLitresPerWeekPeak))}` : '',
          ),
        ],
    submit: companion ? undefined : t('map.save'),
    more: companion
      ? h('button', { type: 'button', onclick: () => context.choose({ type: 'row', id: plant.row }) }, t('map.toRow', plant.row ?? ''))
      : h(
          'button',
          { type: 'button', class: 'danger', onclick: () => save(t('map.did.removePlant', plant.id), [{ type: 'removePlant', plant: plant.id }], { gone: true }) },
          t('map.delete'),
        ),
    onsubmit: () => {
      const [nx, ny] = [place.x.read(), place.y.read()];
      const sizes = measured.read();
      if (companion || !sizes || !Number.isFinite(nx) || !Number.isFinite(ny)) {
        return false;
      }
      const operations = [];
      if (Math.abs(nx - plant.x) > 0.004 || Math.abs(ny - plant.y) > 0.004) {
        operations.push(context.movePlant(plant, [nx, ny]));
      }
      const fields = { ...sizes };
      if (species.control.value && species.control.value !== plant.species) {
        fields.species = species.control.value;
      }
      if (cultivar.control.value.trim() !== (plant.cultivar ?? '')) {
        fields.cultivar = cultivar.control.value.trim() || null;
      }
      if (planted.control.value && planted.control.value !== plant.plantedOn) {
        fields.planted = planted.control.value;
      }
      if (Object.keys(fields).length > 0) {
        operations.push({ type: 'setPlant', plant: plant.id, fields });
      }
      if (operations.length > 0) {
        save(t('map.did.changePlant', plant.id), operations);
      }
      return scene;
    },
  });
}

export function newPlantForm(context) {
  const { t, lengths, save, scene } = context;
  const place = plantFields(context);
  const species = speciesField(context, context.lastSpecies, () => context.useSpecies(species.control.value));
  const row = selectField(t('map.field.row'), '', [
    { value: '', label: t('map.field.noRow') },
    ...scene.rows.map((one) => ({ value: one.id, label: t('map.row', one.id) })),
  ]);
  const planted = textField(t('map.field.planted'), context.lastPlanted, { type: 'date' });
  const pot = textField(t('map.field.pot'), context.lastPot, { help: t('map.field.potHelp') });
  return form(context, {
    title: t('map.add.plant'),
    fields: [h('p', { class: 'help' }, t('map.add.plantHelp')), species, planted, pot, row, place.both],
    submit: t('map.add.here'),
    more: h('button', { type: 'button', onclick: context.close }, t('map.cancel')),
    onsubmit: () => {
      species.problem(species.control.value ? undefined : t('map.problem.species'));
      const at = [place.x.read(), place.y.read()];
      if (!species.control.value || at.some((value) => !Number.isFinite(value))) {
        return false;
      }
      return context.addPlant({ species: species.control.value, at, row: row.control.value || undefined, planted: planted.control.value, pot: pot.control.value.trim() });
    },
  });
}

export function rowForm(context, row) {
  const { t, save } = context;
  const plants = context.scene.plants.filter((one) => one.row === row.id);
  const points = pointsField(context, t('map.field.points'), row.line, 2);
  return form(context, {
    title: t('map.row', row.id),
    fields: [h('p', { class: 'help' }, t('map.rowOf', context.lengths.text(context.length(row.line)), plants.length)), points],
    submit: t('map.save'),
    more: h(
      'button',
      { type: 'button', class: 'danger', onclick: () => context.confirmed(t('map.sureRow', row.id, plants.length), () => save(t('map.did.removeRow', row.id), [{ type: 'remove', path: `/rows/${row.index}` }], { gone: true })) },
      t('map.delete'),
    ),
    onsubmit: () => {
      const line = points.read();
      return line ? save(t('map.did.changeRow', row.id), [{ type: 'moveRow', row: row.id, line }]) : false;
    },
  });
}

export function newRowForm(context) {
  const { t, lengths, save, scene } = context;
  const id = textField(t('map.field.rowName'), context.freeName(scene.rows.map((one) => one.id)));
  const [fromX, fromY, toX, toY] = ['fromX', 'fromY', 'toX', 'toY'].map((key) => lengthField(context, t(`map.field.${key}`)));
  const planted = textField(t('map.field.planted'), context.lastPlanted, { type: 'date' });
  const element = form(context, {
    title: t('map.add.row'),
    fields: [h('p', { class: 'help' }, t('map.add.rowHelp')), id, planted, h('div', { class: 'pair' }, fromX, fromY, toX, toY)],
    submit: t('map.add.row'),
    more: h('button', { type: 'button', onclick: context.close }, t('map.cancel')),
    onsubmit: () => {
      const values = [fromX, fromY, toX, toY].map((one) => one.read());
      if (values.some((value) => !Number.isFinite(value))) {
        return false;
      }
      return add([[values[0], values[1]], [values[2], values[3]]]);
    },
  });
  function add(line) {
    const name = id.control.value.trim();
    id.problem(name ? undefined : t('map.problem.name'));
    if (!name) {
      return false;
    }
    const written = line.map((point) => writtenPlace(lengths, point));
    const way = line.length === 2 ? { from: written[0], to: written[1] } : { line: written };
    save(
      t('map.did.addRow', name),
      [{ type: 'set', path: '/rows/-', value: { id: name, ...way, planted: planted.control.value || scene.start, container: context.lastPot, plants: [] } }],
      { then: { type: 'row', id: name } },
    );
    return true;
  }
  element.drawn = add;
  return element;
}

export function fixtureForm(context, fixture) {
  const { t, save, lengths } = context;
  const path = `/site/fixed/${fixture.index}`;
  const kind = selectField(t('map.field.kind'), fixture.kind, kindOptions(t));
  const height = lengthField(context, t('map.field.height'), fixture.height, { min: 0 });
  const clearance = lengthField(context, t('map.field.clearance'), fixture.clearance, { optional: true, min: 0 });
  const round = fixture.shape.type === 'round';
  const radius = round ? lengthField(context, t('map.field.radius'), fixture.shape.radius, { min: 0.005 }) : null;
  const points = pointsField(context, t(round ? 'map.field.centre' : 'map.field.points'), fixture.shape.coordinates, round ? 1 : fixture.shape.type === 'line' ? 2 : 3);
  const buried = fixture.kind === 'buried-service';
  const surface = SURFACES.includes(fixture.kind);
  const service = buried ? selectField(t('map.field.service'), fixture.service ?? 'unknown', serviceOptions(t)) : null;
  const depth = buried ? lengthField(context, t('map.field.depthBelow'), fixture.depth, { optional: true, min: 0 }) : null;
  const traffic = surface ? selectField(t('map.field.traffic'), fixture.traffic ?? '', trafficOptions(t)) : null;
  return form(context, {
    title: fixture.id,
    fields: [
      kind,
      h('div', { class: 'pair' }, height, clearance),
      buried ? h('div', { class: 'pair' }, service, depth) : null,
      traffic,
      radius,
      points,
      fixture.kind === 'buried-service' ? h('p', { class: 'help' }, t('map.buried')) : null,
    ],
    submit: t('map.save'),
    more: h(
      'button',
      { type: 'button', class: 'danger', onclick: () => save(t('map.did.removeFixture', fixture.id), [{ type: 'remove', path }], { gone: true }) },
      t('map.delete'),
    ),
    onsubmit: () => {
      const places = points.read();
      const high = height.read();
      const clear = clearance.read();
      const wide = radius ? radius.read() : 0;
      const deep = depth ? depth.read() : undefined;
      if (!places || [high, clear, wide, deep].some((one) => Number.isNaN(one))) {
        return false;
      }
      const operations = [
        ...fixtureShape(lengths, fixture, { coordinates: places, radius: wide }),
        { type: 'set', path: `${path}/height`, value: lengths.written(high) },
      ];
      if (kind.control.value !== fixture.kind) {
        operations.push({ type: 'set', path: `${path}/kind`, value: kind.control.value.replaceAll('-', ' ') });
      }
      if (clear !== undefined) {
        operations.push({ type: 'set', path: `${path}/clearance`, value: lengths.written(clear) });
      } else if (fixture.clearance !== undefined) {
        operations.push({ type: 'remove', path: `${path}/clearance` });
      }
      const stays = kind.control.value === fixture.kind;
      const said = (key, before, now) => {
        if (stays && now !== undefined && now !== before) {
          operations.push({ type: 'set', path: `${path}/${key}`, value: now });
        } else if (before !== undefined && (!stays || now === undefined)) {
          operations.push({ type: 'remove', path: `${path}/${key}` });
        }
      };
      if (buried) {
        said('service', fixture.service, service.control.value === 'unknown' ? undefined : service.control.value);
        said('depth', fixture.depth, deep === undefined || deep === fixture.depth ? deep : lengths.written(deep));
      }
      if (surface) {
        said('traffic', fixture.traffic, traffic.control.value || undefined);
      }
      return save(t('map.did.changeFixture', fixture.id), operations);
    },
  });
}

function serviceOptions(t) {
  return ['electric', 'gas', 'water', 'sewer', 'telecom', 'unknown'].map((value) => ({ value, label: t(`map.field.service.${value}`) }));
}

function trafficOptions(t) {
  return ['', 'feet', 'vehicles'].map((value) => ({ value, label: t(`map.field.traffic.${value || 'unsaid'}`) }));
}

function kindOptions(t) {
  return FIXTURE_KINDS.map((value) => ({ value, label: t(`map.kind.${value}`) }));
}

/** The changes that give a fixed thing a shape. */
export function fixtureShape(lengths, fixture, shape) {
  const path = `/site/fixed/${fixture.index}`;
  const places = shape.coordinates.map((point) => writtenPlace(lengths, point));
  if (fixture.shape.type === 'round') {
    return [
      { type: 'set', path: `${path}/at`, value: places[0] },
      { type: 'set', path: `${path}/radius`, value: lengths.written(shape.radius) },
    ];
  }
  return [{ type: 'set', path: `${path}/${fixture.shape.type}`, value: places }];
}

export function newFixtureForm(context, kindWanted) {
  const { t, lengths, save, scene } = context;
  const name = textField(t('map.field.name'), context.freeWord(t(`map.word.${kindWanted}`), scene.fixtures.map((one) => one.id)));
  const kind = selectField(t('map.field.kind'), kindWanted, kindOptions(t));
  const height = lengthField(context, t('map.field.height'), kindWanted === 'building' ? 3 : kindWanted === 'existing-tree' ? 6 : 0, { min: 0 });
  const [x, y, width, depth] = ['x', 'y', 'width', 'depth'].map((key) => lengthField(context, t(`map.field.${key}`)));
  const line = ['fence', 'wall', 'buried-service'].includes(kindWanted);
  const buried = kindWanted === 'buried-service';
  const service = buried ? selectField(t('map.field.service'), 'unknown', serviceOptions(t)) : null;
  const deep = buried ? lengthField(context, t('map.field.depthBelow'), undefined, { optional: true, min: 0 }) : null;
  const round = ['well', 'existing-tree', 'tank'].includes(kindWanted);
  const more = line
    ? pointsField(context, t('map.field.points'), [], 2)
    : round
      ? lengthField(context, t('map.field.radius'), kindWanted === 'tank' ? 0.7 : 0.3, { min: 0.005 })
      : null;
  function add(shape) {
    const id = name.control.value.trim();
    name.problem(id ? undefined : t('map.problem.name'));
    const high = height.read();
    const below = deep ? deep.read() : undefined;
    if (!id || Number.isNaN(high) || Number.isNaN(below)) {
      return false;
    }
    const value = { id, kind: kind.control.value.replaceAll('-', ' '), ...shape, ...(buried ? {} : { height: lengths.written(high ?? 0) }) };
    if (service && service.control.value !== 'unknown') {
      value.service = service.control.value;
    }
    if (below !== undefined) {
      value.depth = lengths.written(below);
    }
    save(t('map.did.addFixture', id), [{ type: 'set', path: '/site/fixed/-', value }], { then: { type: 'fixture', id } });
    return true;
  }
  const element = form(context, {
    title: t('map.add.fixture', t(`map.kind.${kindWanted}`)),
    fields: [
      h('p', { class: 'help' }, t(line ? 'map.add.lineHelp' : round ? 'map.add.roundHelp' : 'map.add.areaHelp')),
      name,
      buried ? null : kind,
      buried ? null : height,
      line ? more : h('div', { class: 'pair' }, x, y, round ? more : [width, depth]),
      buried ? h('div', { class: 'pair' }, service, deep) : null,
      buried ? h('p', { class: 'help' }, t('map.buried')) : null,
    ],
    submit: t('map.add.this'),
    more: h('button', { type: 'button', onclick: context.close }, t('map.cancel')),
    onsubmit: () => {
      if (line) {
        const points = more.read();
        return points ? add({ line: points.map((p) => writtenPlace(lengths, p)) }) : false;
      }
      const at = [x.read(), y.read()];
      const size = round ? [more.read()] : [width.read(), depth.read()];
      if ([...at, ...size].some((value) => !Number.isFinite(value))) {
        return false;
      }
      if (round) {
        return add({ at: writtenPlace(lengths, at), radius: lengths.written(size[0]) });
      }
      const [w, d] = size;
      const corners = [at, [at[0] + w, at[1]], [at[0] + w, at[1] + d], [at[0], at[1] + d]];
      return add({ area: corners.map((p) => writtenPlace(lengths, p)) });
    },
  });
  element.drawType = line ? 'LineString' : round ? 'Point' : 'Polygon';
  element.drawn = (coordinates) => {
    const places = coordinates.map((p) => writtenPlace(lengths, p));
    if (round) {
      const radius = more.read();
      return Number.isFinite(radius) ? add({ at: places[0], radius: lengths.written(radius) }) : false;
    }
    return add(line ? { line: places } : { area: places });
  };
  return element;
}

export function outlineForm(context) {
  const { t, lengths, save, scene } = context;
  const points = pointsField(context, t('map.field.corners'), scene.outline, 3);
  return form(context, {
    title: t('map.outline'),
    fields: [h('p', { class: 'help' }, t('map.outlineOf', lengths.area(context.area(scene.outline)))), points],
    submit: t('map.save'),
    onsubmit: () => {
      const corners = points.read();
      return corners ? save(t('map.did.outline'), outlineChange(lengths, corners)) : false;
    },
  });
}

export function outlineChange(lengths, corners) {
  return [{ type: 'set', path: '/site/boundary', value: corners.map((point) => writtenPlace(lengths, point)) }];
}

export function supplyForm(context) {
  const { t, lengths, save, scene } = context;
  const place = plantFields(context, scene.supply);
  return form(context, {
    title: t('map.supply'),
    fields: [h('p', { class: 'help' }, t(`map.supply.${scene.supply.kind}`)), place.both],
    submit: t('map.save'),
    onsubmit: () => {
      const at = [place.x.read(), place.y.read()];
      return at.every(Number.isFinite) ? save(t('map.did.supply'), supplyChange(lengths, at)) : false;
    },
  });
}

export function supplyChange(lengths, at) {
  return [{ type: 'set', path: '/supply/at', value: writtenPlace(lengths, at) }];
}

/** The change that puts a measured height elsewhere. */
export function heightPlace(lengths, spot, at) {
  return [{ type: 'set', path: `/site/heights/${spot.index}/at`, value: writtenPlace(lengths, at) }];
}

export function heightForm(context, spot) {
  const { t, lengths, save, scene } = context;
  const name = t('map.spot', spot.index + 1);
  const path = `/site/heights/${spot.index}`;
  const height = lengthField(context, t('map.field.spot'), spot.height);
  const place = plantFields(context, spot);
  const gone = scene.heights.length === 1 ? '/site/heights' : path;
  return form(context, {
    title: name,
    fields: [h('p', { class: 'help' }, t('map.heightHelp')), height, place.both],
    submit: t('map.save'),
    more: h(
      'button',
      { type: 'button', class: 'danger', onclick: () => save(t('map.did.removeHeight', name), [{ type: 'remove', path: gone }], { gone: true }) },
      t('map.delete'),
    ),
    onsubmit: () => {
      const value = height.read();
      const at = [place.x.read(), place.y.read()];
      if (![value, ...at].every(Number.isFinite)) {
        return false;
      }
      return save(t('map.did.changeHeight', name), [
        ...heightPlace(lengths, spot, at),
        { type: 'set', path: `${path}/height`, value: lengths.written(value) },
      ]);
    },
  });
}

/** Heights are noted one after another, so the form stays: a click gives the place, then the height is typed. */
export function newHeightForm(context) {
  const { t, lengths, save } = context;
  const height = lengthField(context, t('map.field.spot'));
  const place = plantFields(context);
  const element = form(context, {
    title: t('map.add.height'),
    fields: [h('p', { class: 'help' }, t('map.heightHelp')), h('p', { class: 'help' }, t('map.add.heightHelp')), place.both, height],
    submit: t('map.add.this'),
    more: h('button', { type: 'button', onclick: context.close }, t('map.done')),
    onsubmit: () => {
      const at = [place.x.read(), place.y.read()];
      const value = height.read();
      if (![value, ...at].every(Number.isFinite)) {
        return false;
      }
      const stay = () => {
        [place.x, place.y, height].forEach((one) => {
          one.control.value = '';
          one.problem(undefined);
        });
        place.x.control.focus();
      };
      return save(
        t('map.did.addHeight', lengths.text(value)),
        [{ type: 'set', path: '/site/heights/-', value: { at: writtenPlace(lengths, at), height: lengths.written(value) } }],
        { stay },
      );
    },
  });
  element.drawn = ([at]) => {
    context.mark(at);
    place.x.control.value = lengths.field(at[0]);
    place.y.control.value = lengths.field(at[1]);
    height.control.focus();
  };
  return element;
}

export function mainPipeForm(context) {
  const { t, lengths, save, scene } = context;
  const given = scene.main;
  const drawn = scene.pipes.find((pipe) => pipe.type === 'main');
  const tap = [scene.supply.x, scene.supply.y];
  // What lies there ends at its last bend; the way that is planned may go on from it.
  const current = given.laid ? [tap, ...given.route.filter((p, i) => i > 0 || String(p) !== String(tap))] : drawn?.line ?? (given.route.length > 0 ? given.route : [tap]);
  const points = pointsField(context, t('map.field.points'), current, 2);
  const pipe = selectField(t('map.field.mainPipe'), given.pipe ?? '', pipeOptions(context, 'main'), {
    help: given.pipe || !drawn ? undefined : t('map.chosenForYou', drawn.size),
  });
  const withPipe = () =>
    pipe.control.value === (given.pipe ?? '')
      ? []
      : pipe.control.value
        ? [{ type: 'set', path: '/watering/main/pipe', value: pipe.control.value }]
        : [{ type: 'remove', path: '/watering/main/pipe' }];
  const laid = h('input', { type: 'checkbox', checked: given.laid });
  const withLaid = () =>
    laid.checked === given.laid ? [] : [laid.checked ? { type: 'set', path: '/watering/main/laid', value: true } : { type: 'remove', path: '/watering/main/laid' }];
  const named = () => {
    const missing = laid.checked && !pipe.control.value;
    pipe.problem(missing ? t('map.problem.mainPipe') : undefined);
    return !missing;
  };
  const route = (line) =>
    named() &&
    save(t('map.did.main'), [
      { type: 'set', path: '/watering/main/route', value: line.map((p) => writtenPlace(lengths, p)) },
      ...withPipe(),
      ...withLaid(),
    ]);
  const element = form(context, {
    title: t('map.main'),
    fields: [
      h('p', { class: 'help' }, t('map.mainHelp')),
      pipe,
      h('label', { class: 'choice' }, laid, h('span', null, t('map.field.laid'), h('span', { class: 'help' }, h('br'), t('map.mainLaidHelp')))),
      points,
      h('p', { class: 'help' }, t('map.buried')),
    ],
    submit: t('map.save'),
    more: [
      h('button', { type: 'button', onclick: () => context.draw(element, 'LineString', t('map.hint.line')) }, t('map.drawWay')),
      given.route.length > 0
        ? h(
            'button',
            {
              type: 'button',
              onclick: () =>
                save(t('map.did.mainFree'), ['route', ...(given.laid ? ['laid'] : [])].map((key) => ({ type: 'remove', path: `/watering/main/${key}` }))),
            },
            t('map.mainFree'),
          )
        : null,
      h('button', { type: 'button', onclick: context.close }, t('map.cancel')),
    ],
    onsubmit: () => {
      const line = points.read();
      if (!line) {
        return false;
      }
      const same = JSON.stringify(line.map((p) => writtenPlace(lengths, p))) === JSON.stringify(current.map((p) => writtenPlace(lengths, p)));
      if (!named()) {
        return false;
      }
      const operations = [...withPipe(), ...withLaid()];
      // Who only names the pipe leaves its way to the program; what lies there lies as it is shown.
      const wayKnown = !laid.checked || given.laid;
      return same && operations.length > 0 && wayKnown ? save(t('map.did.main'), operations) : route(line);
    },
  });
  element.drawn = route;
  return element;
}

function pipeOptions({ t, pipesFor }, use) {
  return [{ value: '', label: t('map.chooseForMe') }, ...pipesFor(use).map((one) => ({ value: one.key, label: one.name }))];
}

/** The change that gives an own line another way. */
export function lineWay(lengths, own, points) {
  return [{ type: 'set', path: `${own.path}/route`, value: points.map((point) => writtenPlace(lengths, point)) }];
}

/** The line of tubing of a row: how it runs, what it is, whether it lies there already, and its way. */
export function lineForm(context, row) {
  const { t, lengths, save, scene } = context;
  const own = scene.ownLines.find((one) => one.row === row.id);
  const lines = context.linesOf(row.id);
  const name = t('map.line', row.id);
  const run = selectField(
    t('map.field.run'),
    own?.run ?? lines[0]?.run ?? 'loop',
    ['loop', 'two-sided', 'dead-end'].map((value) => ({ value, label: t(`map.run.${value}`) })),
  );
  const tubing = selectField(t('map.field.tubing'), own?.tubing ?? '', pipeOptions(context, 'lateral'));
  const laid = h('input', { type: 'checkbox', checked: own?.laid });
  const points = pointsField(context, t('map.field.way'), own?.route ?? [], 0);
  const now =
    lines.length > 0
      ? t('map.lineNow', lines[0].size, lengths.text(lines.reduce((sum, one) => sum + context.length(one.line), 0)), lines[0].zone)
      : t('map.lineNone');
  const element = form(context, {
    title: name,
    fields: [
      h('p', { class: 'help' }, now, ' ', t(own ? 'map.lineOwn' : 'map.lineProposed')),
      run,
      tubing,
      h('label', { class: 'choice' }, laid, h('span', null, t('map.field.laid'), h('span', { class: 'help' }, h('br'), t('map.laidHelp')))),
      points,
      h('p', { class: 'help' }, t('map.wayHelp')),
    ],
    submit: t(own ? 'map.save' : 'map.keepLine'),
    more: [
      h(
        'button',
        { type: 'button', onclick: () => context.draw(element, run.control.value === 'loop' ? 'Polygon' : 'LineString', t(run.control.value === 'loop' ? 'map.hint.ring' : 'map.hint.way')) },
        t('map.drawWay'),
      ),
      own
        ? h(
            'button',
            {
              type: 'button',
              onclick: () => save(t('map.did.lineFree', name), [{ type: 'remove', path: scene.ownLines.length === 1 && own.path === '/watering/laterals/0' ? '/watering/laterals' : own.path }]),
            },
            t('map.lineFree'),
          )
        : null,
      h('button', { type: 'button', onclick: context.close }, t('map.cancel')),
    ],
    onsubmit: () => {
      const way = points.read();
      const least = run.control.value === 'loop' ? 3 : 2;
      if (!way) {
        return false;
      }
      points.problem(way.length > 0 && way.length < least ? t('map.points.few', least) : undefined);
      tubing.problem(laid.checked && !tubing.control.value ? t('map.problem.tubing') : undefined);
      if ((way.length > 0 && way.length < least) || (laid.checked && !tubing.control.value)) {
        return false;
      }
      const value = {
        row: row.id,
        run: run.control.value.replace('-', ' '),
        ...(tubing.control.value ? { tubing: tubing.control.value } : {}),
        ...(laid.checked ? { laid: true } : {}),
        ...(way.length > 0 ? { route: way.map((point) => writtenPlace(lengths, point)) } : {}),
      };
      return save(t('map.did.line', name), own ? changesOf(own, value) : [{ type: 'set', path: '/watering/laterals/-', value }], {
        then: { type: 'line', id: row.id },
      });
    },
  });
  element.drawn = (coordinates) => {
    points.control.value = coordinates.map(([x, y]) => `${lengths.field(x)}; ${lengths.field(y)}`).join('\n');
    points.control.rows = Math.min(10, coordinates.length + 1);
    element.requestSubmit();
  };
  return element;
}

/** The changes that make an own line what `value` says; what the map does not show of it stays. */
function changesOf(own, value) {
  const had = { tubing: own.tubing, laid: own.laid || undefined, route: own.route.length > 0 ? own.route : undefined };
  return [
    { type: 'set', path: `${own.path}/run`, value: value.run },
    ...Object.keys(had).flatMap((key) =>
      value[key] !== undefined
        ? [{ type: 'set', path: `${own.path}/${key}`, value: value[key] }]
        : had[key] !== undefined
          ? [{ type: 'remove', path: `${own.path}/${key}` }]
          : [],
    ),
  ];
}

export function measureForm(context, { things, showBetween }) {
  const { t } = context;
  const options = [{ value: '', label: t('map.choose') }, ...things.map((one, i) => ({ value: String(i), label: one.label }))];
  const a = selectField(t('map.measure.from'), '', options);
  const b = selectField(t('map.measure.to'), '', options);
  const result = h('p', { class: 'figure', role: 'status' });
  const update = () => {
    const [one, other] = [things[a.control.value], things[b.control.value]];
    result.textContent = one && other ? showBetween(one, other) : '';
  };
  [a, b].forEach((one) => one.control.addEventListener('change', update));
  const element = form(context, {
    title: t('map.measure'),
    fields: [h('p', { class: 'help' }, t('map.measure.help')), a, b, result],
    onsubmit: () => false,
    more: h('button', { type: 'button', onclick: context.close }, t('map.done')),
  });
  element.show = (text) => {
    result.textContent = text;
  };
  return element;
}

export { choices };
