// What goes where? The map of a site with the list of its things, their forms, and the figures that
// follow every move.
import { add, h, replace } from '../dom.js';
import { language } from '../i18n.js';
import { icon } from '../icons.js';
import { MapCanvas } from './canvas.js';
import * as forms from './forms-of-things.js';
import { areaOf, distance, lengthOf, moved, nearestOn } from './geometry.js';
import { dropPhoto, keepPhoto, keptPhoto, photoForm } from './photo.js';
import { SiteEditor } from './site-editor.js';
import { printsMap } from './print.js';
import { lengthsOf } from './units.js';

const FULL_GROWN = 11;
/** Things that are drawn or typed, but not moved as a whole. */
const STILL = ['outline', 'line', 'main'];
const STEPS = [0.1, 0.5, 1];
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

let library;

/** The drawing library, fetched once. */
function drawingLibrary() {
  library ??= new Promise((resolve, reject) => {
    document.head.append(h('link', { rel: 'stylesheet', href: '/webjars/ol/ol.css' }));
    document.head.append(h('script', { src: '/webjars/ol/ol.js', onload: resolve, onerror: reject }));
  }).catch((problem) => {
    library = undefined;
    throw problem;
  });
  return library;
}

export async function show(root, context) {
  const { api, siteId } = context;
  const editor = new SiteEditor(api, siteId, context.site);
  const [species, pipes, description, , photo] = await Promise.all([
    api.get('/catalogue/species'),
    api.get('/catalogue/pipes'),
    api.get(`${editor.base}/description`),
    drawingLibrary(),
    keptPhoto(siteId),
  ]);
  const page = new MapPage(root, context, { editor, species, pipes, description, photo });
  await page.begin();
  return () => page.dispose();
}

class MapPage {
  constructor(root, context, { editor, species, pipes, description, photo }) {
    this.root = root;
    this.context = context;
    this.t = context.t;
    this.editor = editor;
    this.species = species;
    this.pipes = pipes;
    this.photo = photo;
    const units = context.me?.settings?.units || description.data?.units || 'metric';
    this.lengths = lengthsOf(units, language());
    this.number = new Intl.NumberFormat(language(), { maximumFractionDigits: 0 });
    this.readOnly = Boolean(context.site?.readOnly);
    this.year = 5;
    this.step = STEPS[1];
    this.shown = { pipes: true, emitters: true, trench: false, heights: true, names: true, photo: true, snap: true };
    this.selected = undefined;
    this.panelForm = undefined;
    // How often something was opened in the panel.
    this.turns = 0;
    this.lastSpecies = '';
    this.lastPot = this.lengths.us ? '5 gal' : '20 L';
    this.measured = { waits: [], server: [], costs: [] };
  }

  async begin() {
    this.build();
    this.canvas = new MapCanvas(this.mapElement, { lengths: this.lengths, shown: this.shown });
    this.canvas.editable = !this.readOnly;
    this.listen();
    await this.editor.load();
    if (this.photo) {
      this.canvas.setPhoto(this.photo);
      this.drawLayers();
    }
    this.canvas.setYear(this.year);
    this.drawTools();
    this.stopPrinting = printsMap(this.root, () => ({
      t: this.t,
      scene: this.editor.scene,
      lengths: this.lengths,
      shown: this.shown,
      year: this.year,
      yearText: this.yearText.textContent,
      photo: this.photo,
      name: this.context.site?.name ?? '',
      day: new Intl.DateTimeFormat(language(), { dateStyle: 'long' }).format(new Date()),
    }));
  }

  dispose() {
    this.alive = false;
    clearTimeout(this.nudgeTimer);
    document.removeEventListener('keydown', this.onKey);
    window.removeEventListener('focus', this.onFocus);
    this.resize.disconnect();
    this.stopPrinting?.();
    this.canvas.dispose();
    document.body.classList.remove('map-open');
  }

  // ---- The page ----

  build() {
    const { t } = this;
    this.alive = true;
    document.body.classList.add('map-open');
    this.mapElement = h('div', {
      class: 'map-view',
      tabindex: '0',
      role: 'application',
      'aria-label': t('map.view'),
      'aria-describedby': 'map-keys',
    });
    this.tools = h('div', { class: 'map-tools', role: 'group', 'aria-label': t('map.tools') });
    this.banner = h('div', { class: 'map-banner' });
    this.hint = h('div', { class: 'map-hint', hidden: true });
    this.yearText = h('output', { for: 'map-year' });
    const slider = h('input', {
      id: 'map-year',
      type: 'range',
      min: 0,
      max: FULL_GROWN,
      step: 1,
      value: this.year,
      oninput: () => this.setYear(Number(slider.value)),
    });
    this.slider = slider;
    this.north = h('div', { class: 'map-north', role: 'img' });
    this.figures = h('section', { class: 'map-figures', 'aria-label': t('map.figures') });
    this.panel = h('div', { class: 'map-panel', oninput: () => { this.typed = true; } });
    this.layersBox = h('div', { class: 'map-layers' });
    const stage = h(
      'div',
      { class: 'map-stage' },
      this.tools,
      this.mapElement,
      this.north,
      this.hint,
      h(
        'div',
        { class: 'map-zoom', role: 'group', 'aria-label': t('map.zoom') },
        this.tool('add', t('map.zoomIn'), () => this.canvas.zoom(1.5)),
        this.tool('minus', t('map.zoomOut'), () => this.canvas.zoom(1 / 1.5)),
        this.tool('fit', t('map.fit'), () => this.canvas.fit()),
      ),
      h('div', { class: 'map-years' }, h('label', { for: 'map-year' }, t('map.year')), slider, this.yearText),
    );
    add(
      this.root,
      h(
        'div',
        { class: 'map-page' },
        stage,
        h(
          'div',
          { class: 'map-side' },
          h('h1', null, t('shell.question.map')),
          h('p', { id: 'map-keys', class: 'hidden-text' }, t('map.keys')),
          this.banner,
          this.figures,
          this.panel,
        ),
      ),
    );
    this.resize = new ResizeObserver(() => this.canvas?.map.updateSize());
    this.resize.observe(this.mapElement);
  }

  tool(name, label, onclick, more = {}) {
    return h('button', { type: 'button', class: 'square', title: label, 'aria-label': label, onclick, ...more }, icon(name));
  }

  drawTools() {
    const { t } = this;
    const state = this.editor.state ?? {};
    const focused = this.tools.contains(document.activeElement) ? document.activeElement.dataset.tool : undefined;
    const button = (key, name, label, onclick, more = {}) =>
      h('button', { type: 'button', title: label, onclick, dataset: { tool: key }, ...more }, icon(name), h('span', { class: 'word' }, label));
    const adding = (key) => ({ 'aria-pressed': String(this.mode === key) });
    replace(
      this.tools,
      this.readOnly
        ? null
        : [
            this.tool('undo', t('map.undo'), () => this.undo(), { dataset: { tool: 'undo' }, 'aria-disabled': String(!state.canUndo), 'aria-keyshortcuts': 'Control+Z' }),
            this.tool('redo', t('map.redo'), () => this.redo(), { dataset: { tool: 'redo' }, 'aria-disabled': String(!state.canRedo), 'aria-keyshortcuts': 'Control+Shift+Z' }),
            button('plant', 'plants', t('map.tool.plant'), () => this.startAdding('plant'), adding('plant')),
            button('add', 'draw', t('map.tool.add'), () => this.showAddMenu(), adding('menu')),
          ],
      button('measure', 'measure', t('map.tool.measure'), () => this.startMeasure(), adding('measure')),
      button('photo', 'photo', t('map.tool.photo'), () => this.startPhoto(), adding('photo')),
      button('layers', 'layers', t('map.tool.layers'), () => this.showLayers(), adding('layers')),
      this.tool('print', t('map.tool.print'), () => window.print(), { dataset: { tool: 'print' } }),
    );
    if (focused) {
      this.tools.querySelector(`[data-tool="${focused}"]`)?.focus();
    }
  }

  setYear(year) {
    const { t } = this;
    this.year = year;
    this.canvas?.setYear(year);
    const start = Number(this.editor.scene?.start?.slice(0, 4));
    const text = year >= FULL_GROWN ? t('map.fullGrown') : year === 0 ? t('map.planted0', start) : t('map.yearOf', year, start + year);
    this.yearText.textContent = text;
    this.slider.setAttribute('aria-valuetext', text);
  }

  // ---- What happens ----

  listen() {
    const { editor, canvas } = this;
    editor.addEventListener('scene', ({ detail }) => this.sceneCame(detail.scene));
    editor.addEventListener('state', ({ detail }) => {
      this.readOnly = Boolean(detail.state.readOnly);
      this.context.siteChanged(detail.state);
      this.drawTools();
    });
    editor.addEventListener('figures', ({ detail }) => this.figuresCame(detail));
    editor.addEventListener('cost', ({ detail }) => {
      this.measured.costs.push(Math.round(detail.waited));
      this.figures.dataset.costs = this.measured.costs.join(' ');
      if (this.trying) {
        this.tried = { ...this.tried, cost: detail.cost };
        this.drawFigures();
      }
    });
    editor.addEventListener('untried', ({ detail }) => {
      this.tried = { problem: detail.problem.message };
      this.drawFigures();
    });
    editor.addEventListener('refused', ({ detail }) => this.refused(detail.problem));
    editor.addEventListener('stale', ({ detail }) => this.stale(detail.edit));
    canvas.addEventListener('choose', ({ detail }) => this.choose(detail.thing, { fromMap: true, quiet: detail.dragging }));
    canvas.addEventListener('move', ({ detail }) => this.tryMove(detail));
    canvas.addEventListener('drop', ({ detail }) => this.dropped(detail));
    canvas.addEventListener('reshape', ({ detail }) => this.reshaped(detail));
    canvas.addEventListener('drawn', ({ detail }) => this.drawn(detail));
    this.onKey = (event) => this.key(event);
    document.addEventListener('keydown', this.onKey);
    this.onFocus = () => this.lookForOthers();
    window.addEventListener('focus', this.onFocus);
    this.mapElement.addEventListener('keydown', (event) => this.mapKey(event));
  }

  sceneCame(scene) {
    this.tried = undefined;
    this.canvas.endMove();
    this.canvas.setConflicts(scene.conflicts);
    this.canvas.draw(scene);
    this.setYear(this.year);
    const up = scene.north ?? 0;
    replace(this.north, icon('north'), h('span', { 'aria-hidden': 'true' }, this.t('map.northLetter')));
    this.north.setAttribute('aria-label', this.t('map.north', this.number.format(Math.round(up))));
    this.north.firstChild.style.transform = `rotate(${-up}deg)`;
    if (this.selected && !this.thing(this.selected)) {
      this.selected = undefined;
      this.canvas.select(undefined);
    }
    this.refreshPanel();
    this.drawFigures();
  }

  figuresCame({ figures, waited, more }) {
    this.measured.waits.push(waited);
    this.measured.server.push(figures.tookMillis);
    // For who measures: time from the question to the new figures, milliseconds.
    this.figures.dataset.waited = String(Math.round(waited * 10) / 10);
    this.figures.dataset.server = String(Math.round(figures.tookMillis * 10) / 10);
    this.figures.dataset.count = String(this.measured.waits.length);
    this.figures.dataset.waits = this.measured.waits.map((one) => Math.round(one)).join(' ');
    if (!this.trying) {
      return;
    }
    this.tried = { ...this.tried, ...figures, problem: undefined };
    this.canvas.setConflicts(figures.conflicts);
    this.drawFigures();
    if (!more && this.trying.spoken) {
      this.context.say(this.figureWords());
    }
  }

  // ---- Figures ----

  drawFigures() {
    const { t } = this;
    const { scene } = this.editor;
    const now = this.tried ?? {};
    const conflicts = now.conflicts ?? scene.conflicts;
    const peak = scene.plants.reduce((sum, plant) => sum + (plant.needLitresPerWeekPeak ?? 0), 0);
    const water = now.water ? this.water(now.water.litresPerWeekPeak) : (scene.pending ? t('map.pending') : this.water(peak));
    const cost = now.cost?.totalText ?? this.totalText;
    const change = now.cost && Math.abs(now.cost.change) >= 0.005 ? now.cost.change : 0;
    const shade = now.shade ?? this.shade;
    const line = (name, label, value, extra) =>
      h('div', { class: 'map-figure', dataset: { figure: name } }, h('dt', null, label), h('dd', null, value, extra));
    replace(
      this.figures,
      now.problem ? h('div', { class: 'note bad' }, icon('warning'), h('p', null, now.problem)) : null,
      h(
        'dl',
        null,
        line('plants', t('map.fig.plants'), this.number.format(scene.plants.length)),
        line('spacing', t('map.fig.spacing'), conflicts.length === 0 ? t('map.fig.enough') : t('map.fig.tooNear', conflicts.length)),
        shade ? line('shade', t('map.fig.shade'), shade.length === 0 ? t('map.fig.none') : t('map.fig.shaded', new Set(shade.map((one) => one.plant)).size)) : null,
        line('water', t('map.fig.water'), water),
        cost
          ? line('cost', t('map.fig.cost'), cost, change ? h('span', { class: 'change' }, ` (${change > 0 ? '+' : ''}${now.cost.changeText})`) : null)
          : null,
      ),
      conflicts.length > 0
        ? h(
            'details',
            { open: this.conflictsOpen, ontoggle: (event) => { this.conflictsOpen = event.target.open; } },
            h('summary', null, t('map.tooNear', conflicts.length)),
            h(
              'ul',
              { class: 'map-conflicts' },
              conflicts.slice(0, 40).map((one) =>
                h('li', null, h('button', { type: 'button', class: 'plain', onclick: () => this.choose({ type: 'plant', id: one.a }, { reveal: true }) }, one.text)),
              ),
            ),
          )
        : null,
    );
    if (!this.asked && this.editor.scene && !scene.pending) {
      this.askFirstFigures();
    }
  }

  /** Shade and cost of the site as it stands, by asking about a move that moves nothing. */
  async askFirstFigures() {
    const version = this.editor.scene.version;
    const still = this.editor.scene.plants.find((one) => one.movable);
    this.asked = true;
    if (!still) {
      return;
    }
    const operations = [{ type: 'movePlant', plant: still.id, x: still.x, y: still.y }];
    try {
      const [figures, cost] = await Promise.all([
        this.context.api.ask(`${this.editor.base}/try`, { operations, cost: false }),
        this.context.api.ask(`${this.editor.base}/try/cost`, { operations }),
      ]);
      if (this.alive && this.editor.scene.version === version) {
        this.shade = figures.shade;
        this.totalText = cost.totalText;
        this.drawFigures();
      }
    } catch {
      // The map is of use without them.
    }
  }

  figureWords() {
    const { t } = this;
    const now = this.tried ?? {};
    const parts = [];
    if (this.trying?.place) {
      parts.push(t('map.say.at', this.lengths.text(this.trying.place[0]), this.lengths.text(this.trying.place[1])));
    }
    if (now.conflicts) {
      const mine = now.conflicts.filter((one) => one.a === this.trying?.thing.id || one.b === this.trying?.thing.id);
      parts.push(mine.length > 0 ? mine[0].text : t('map.say.enough'));
    }
    if (now.water) {
      parts.push(t('map.say.water', this.water(now.water.litresPerWeekPeak)));
    }
    return parts.join(' ');
  }

  water(litresPerWeek) {
    const amount = this.lengths.us ? litresPerWeek / 3.785411784 : litresPerWeek;
    return this.t(this.lengths.us ? 'map.gallonsWeek' : 'map.litresWeek', this.number.format(amount));
  }

  // ---- Choosing ----

  /** What the scene knows of a thing. */
  thing({ type, id }) {
    const { scene } = this.editor;
    switch (type) {
      case 'plant':
        return scene.plants.find((one) => one.id === id);
      case 'row':
        return scene.rows.find((one) => one.id === id);
      case 'fixture':
        return scene.fixtures.find((one) => one.id === id);
      case 'supply':
        return scene.supply;
      case 'line':
        return scene.rows.find((one) => one.id === id);
      case 'main':
        return scene.main;
      case 'height':
        return scene.heights.find((one) => String(one.index) === id);
      default:
        return scene.outline;
    }
  }

  choose(thing, { fromMap = false, quiet = false, reveal = false, focus = false } = {}) {
    this.finishNudge();
    this.turns += 1;
    this.endMode();
    this.selected = thing;
    this.canvas.select(thing);
    if (thing && (reveal || !fromMap)) {
      this.canvas.reveal(thing);
    }
    if (!quiet) {
      this.drawPanel();
      if (thing) {
        this.context.say(this.t('map.say.chosen', this.nameOf(thing)));
      }
      if (focus) {
        this.panel.querySelector('h2')?.focus();
      }
    }
  }

  nameOf({ type, id }) {
    const { t } = this;
    if (type === 'plant') {
      const plant = this.thing({ type, id });
      return plant ? `${id} ${plant.speciesName}` : id;
    }
    if (type === 'line' || type === 'main') {
      return type === 'main' ? t('map.main') : t('map.line', id);
    }
    if (type === 'height') {
      return t('map.spot', Number(id) + 1);
    }
    return type === 'row' ? t('map.row', id) : type === 'outline' ? t('map.outline') : type === 'supply' ? t('map.supply') : id;
  }

  /** Draws the panel anew for a new scene, unless something was typed into it. */
  refreshPanel() {
    const focused = this.panel.contains(document.activeElement) ? document.activeElement : undefined;
    if (this.mode || this.typed) {
      return;
    }
    const all = () => [...this.panel.querySelectorAll('button, select, summary, input, textarea, h2')];
    const place = all().indexOf(focused);
    const key = focused?.dataset.thing;
    this.drawPanel();
    if (focused) {
      const again = key ? this.panel.querySelector(`[data-thing="${CSS.escape(key)}"]`) : all()[place];
      again?.focus();
    }
  }

  drawPanel() {
    this.panelForm = undefined;
    this.typed = false;
    if (!this.selected) {
      replace(this.panel, this.list());
      return;
    }
    const thing = this.thing(this.selected);
    const context = this.formContext();
    const make = { plant: forms.plantForm, row: forms.rowForm, fixture: forms.fixtureForm, supply: forms.supplyForm, height: forms.heightForm, line: forms.lineForm, main: forms.mainPipeForm }[this.selected.type];
    const element = make ? make(context, thing) : forms.outlineForm(context);
    replace(
      this.panel,
      h(
        'button',
        { type: 'button', class: 'plain back', onclick: () => { const was = this.selected; this.choose(undefined); this.focusListed(was); } },
        icon('back'),
        this.t('map.toList'),
      ),
      this.readOnly || STILL.includes(this.selected.type) || (this.selected.type === 'plant' && !thing.movable) ? null : this.nudgePad(),
      element,
    );
  }

  /** Buttons and keys that move what is chosen. */
  nudgePad() {
    const { t } = this;
    const arrow = (key, label, turn) => {
      const button = h('button', { type: 'button', class: `square ${key}`, 'aria-label': label, title: label, onclick: () => this.nudge(ARROWS[key]) }, icon('next'));
      button.firstChild.style.transform = `rotate(${turn}deg)`;
      return button;
    };
    const step = h(
      'select',
      { id: 'map-step', onchange: () => { this.step = STEPS[step.selectedIndex]; } },
      STEPS.map((one) => h('option', { selected: one === this.step }, this.lengths.text(this.stepSize(one)))),
    );
    return h(
      'fieldset',
      { class: 'map-nudge' },
      h('legend', null, t('map.nudge')),
      h('p', { class: 'help' }, t('map.nudgeHelp')),
      h(
        'div',
        { class: 'row' },
        h(
          'div',
          { class: 'pad' },
          arrow('ArrowLeft', t('map.left'), 180),
          arrow('ArrowUp', t('map.up'), -90),
          arrow('ArrowDown', t('map.down'), 90),
          arrow('ArrowRight', t('map.right'), 0),
        ),
        h('div', null, h('label', { for: 'map-step' }, t('map.step')), step),
      ),
    );
  }

  stepSize(step) {
    return this.lengths.us ? step * 2 * this.lengths.size : step;
  }

  list() {
    const { t } = this;
    const { scene } = this.editor;
    const item = (thing, label, extra) =>
      h(
        'li',
        null,
        h(
          'button',
          { type: 'button', class: 'plain thing', dataset: { thing: `${thing.type}:${thing.id}` }, onclick: () => this.choose(thing, { focus: true }) },
          h('span', null, label),
          extra ? [' ', h('span', { class: 'quiet' }, extra)] : null,
        ),
      );
    const group = (key, title, items, open = false) =>
      h(
        'details',
        { open: this.open?.[key] ?? open, ontoggle: (event) => { this.open = { ...this.open, [key]: event.target.open }; } },
        h('summary', null, `${title} (${items.length})`),
        h('ul', { class: 'map-list' }, items),
      );
    const plants = [...scene.plants].sort((a, b) => a.id.localeCompare(b.id, undefined, { numeric: true }));
    const bad = new Set(scene.conflicts.flatMap(({ a, b }) => [a, b]));
    const plantItem = (one) => item({ type: 'plant', id: one.id }, `${one.id} ${one.speciesName}`, bad.has(one.id) ? t('map.near') : one.cultivar);
    const main = plants.filter((one) => one.role === 'main');
    const others = plants.filter((one) => one.role !== 'main');
    return h(
      'div',
      null,
      h('h2', null, t('map.things')),
      h('p', { class: 'help' }, t(this.readOnly ? 'map.thingsRead' : 'map.thingsHelp')),
      group('main', t('map.trees'), main.map(plantItem), main.length <= 14),
      others.length > 0 ? group('others', t('map.companions'), others.map(plantItem)) : null,
      group('rows', t('map.rows'), scene.rows.map((one) => item({ type: 'row', id: one.id }, t('map.row', one.id), this.lengths.text(lengthOf(one.line))))),
      group('fixtures', t('map.fixtures'), scene.fixtures.map((one) => item({ type: 'fixture', id: one.id }, one.id, t(`map.kind.${one.kind}`)))),
      group(
        'heights',
        t('map.heights'),
        scene.heights.map((one) => item({ type: 'height', id: String(one.index) }, t('map.spot', one.index + 1), this.lengths.text(one.height))),
      ),
      group('land', t('map.land'), [
        item({ type: 'outline', id: 'outline' }, t('map.outline'), this.lengths.area(areaOf(scene.outline))),
        item({ type: 'supply', id: 'supply' }, t('map.supply'), t(`map.supply.${scene.supply.kind}`)),
      ]),
      group('pipes', t('map.pipes'), [
        item({ type: 'main', id: 'main' }, t('map.main'), scene.pipes.find((one) => one.type === 'main')?.size),
        ...scene.rows.map((one) => item({ type: 'line', id: one.id }, t('map.line', one.id), this.lineWords(one.id))),
      ]),
      scene.zones.length > 0 ? this.zones() : null,
      scene.trench.length > 0 ? this.trench() : null,
    );
  }

  /** What a row's line of tubing is, in a few words. */
  lineWords(row) {
    const { scene } = this.editor;
    const own = scene.ownLines.find((one) => one.row === row);
    const run = own?.run ?? scene.pipes.find((one) => one.row === row)?.run;
    return run ? `${this.t(`map.run.${run}`)}${own ? `, ${this.t(own.laid ? 'map.laid' : 'map.own')}` : ''}` : undefined;
  }

  /** The trench part by part; opening the list shows it on the map. */
  trench() {
    const { t } = this;
    const { trench, crossings } = this.editor.scene;
    return h(
      'details',
      {
        open: this.open?.trench,
        ontoggle: (event) => {
          this.open = { ...this.open, trench: event.target.open };
          if (event.target.open && !this.shown.trench) {
            this.shown = { ...this.shown, trench: true };
            this.canvas.setShown(this.shown);
          }
        },
      },
      h('summary', null, `${t('map.trenches')} (${trench.length})`),
      h('p', { class: 'help' }, t('map.buried')),
      h(
        'ol',
        { class: 'map-list map-trench' },
        trench.map((part) =>
          h(
            'li',
            null,
            h('strong', null, t('map.trenchPart', part.number)),
            ` ${t('map.trenchIs', part.lengthText, part.depthText, part.widthText, part.ground)}`,
            part.vehicles ? ` ${t('map.trenchVehicles')}` : null,
            crossings
              .filter((one) => one.segment === part.number)
              .map((one) => h('p', { class: 'crossing' }, icon('warning'), h('span', null, t('map.crossing', one.service, t(`map.field.service.${one.carries}`))))),
          ),
        ),
      ),
    );
  }

  zones() {
    const { t } = this;
    const { zones, emitters } = this.editor.scene;
    return h(
      'details',
      null,
      h('summary', null, `${t('map.zones')} (${zones.length})`),
      h(
        'ul',
        { class: 'map-list' },
        zones.map((zone) => {
          const own = emitters.filter((one) => one.zone === zone.id).sort((a, b) => a.pressure - b.pressure);
          return h(
            'li',
            { class: 'zone' },
            h('strong', null, zone.id),
            ` ${zone.flowText}`,
            own.length > 0 ? h('p', { class: 'quiet' }, t('map.zoneOf', own.length, own[0].pressureText, own.at(-1).pressureText, own[0].plant)) : null,
          );
        }),
      ),
    );
  }

  focusListed(thing) {
    const button = thing && this.panel.querySelector(`[data-thing="${CSS.escape(`${thing.type}:${thing.id}`)}"]`);
    button?.closest('details')?.setAttribute('open', '');
    (button ?? this.panel.querySelector('summary'))?.focus();
  }

  // ---- Adding, measuring, photo ----

  formContext() {
    const page = this;
    return {
      t: this.t,
      lengths: this.lengths,
      species: this.species,
      scene: this.editor.scene,
      readOnly: this.readOnly,
      lastSpecies: this.lastSpecies,
      lastPot: this.lastPot,
      lastPlanted: this.lastPlanted ?? this.editor.scene.plants[0]?.plantedOn ?? this.editor.scene.start,
      pipesFor: (use) => this.pipes.filter((one) => one.use === use),
      linesOf: (row) => this.editor.scene.pipes.filter((one) => one.row === row),
      draw: (element, type, hint) => this.drawFor(element, type, hint),
      save: (label, operations, more) => this.save(label, operations, more),
      choose: (thing) => this.choose(thing, { focus: true }),
      mark: (place) => this.canvas.mark(place),
      close: () => this.choose(undefined),
      crown: (plant) => this.canvas.crown(plant),
      water: (litres) => this.water(litres),
      length: lengthOf,
      area: areaOf,
      movePlant: (plant, place) => this.moveOf(plant, place),
      useSpecies: (key) => { page.lastSpecies = key; },
      addPlant: (one) => this.addPlant(one),
      freeName: (used) => {
        for (let i = 0; ; i += 1) {
          const name = i < 26 ? String.fromCharCode(65 + i) : `R${i}`;
          if (!used.includes(name)) {
            return name;
          }
        }
      },
      freeWord: (word, used) => {
        const plain = word.toLowerCase();
        for (let i = 1; ; i += 1) {
          const name = i === 1 ? plain : `${plain} ${i}`;
          if (!used.includes(name)) {
            return name;
          }
        }
      },
      confirmed: (question, work) => this.confirm(question, work),
    };
  }

  /** Lets the owner draw on the map for a form that stays in the panel with what was typed. */
  drawFor(element, type, hint) {
    this.setMode('menu', element, hint);
    this.canvas.startDrawing(type);
  }

  setMode(mode, element, hint) {
    this.finishNudge();
    this.turns += 1;
    this.mode = mode;
    this.selected = undefined;
    this.canvas.stopDrawing();
    this.canvas.select(undefined);
    this.panelForm = element;
    replace(
      this.panel,
      h('button', { type: 'button', class: 'plain back', onclick: () => this.choose(undefined) }, icon('back'), this.t('map.toList')),
      element,
    );
    this.showHint(hint);
    this.drawTools();
    this.panel.querySelector('h2')?.focus();
  }

  endMode() {
    if (this.mode) {
      this.mode = undefined;
      this.panelForm = undefined;
      this.canvas.stopDrawing();
      this.showHint(undefined);
      this.drawTools();
    }
  }

  showHint(text) {
    replace(this.hint, text ? [icon('info'), h('span', null, text)] : []);
    this.hint.hidden = !text;
  }

  startAdding(what, kind) {
    const { t } = this;
    const context = this.formContext();
    if (what === 'plant') {
      this.setMode('plant', forms.newPlantForm(context), t('map.hint.plant'));
      this.canvas.startDrawing('Point');
    } else if (what === 'row') {
      this.setMode('menu', forms.newRowForm(context), t('map.hint.line'));
      this.canvas.startDrawing('LineString');
    } else if (what === 'height') {
      this.setMode('menu', forms.newHeightForm(context), t('map.hint.height'));
      this.canvas.startDrawing('Point');
    } else if (what === 'main') {
      this.setMode('menu', forms.mainPipeForm(context), t('map.hint.line'));
      this.canvas.startDrawing('LineString');
    } else {
      const element = forms.newFixtureForm(context, kind);
      const type = element.drawType;
      this.setMode('menu', element, t(type === 'Polygon' ? 'map.hint.area' : type === 'Point' ? 'map.hint.point' : 'map.hint.line'));
      this.canvas.startDrawing(type);
    }
  }

  /** A line of tubing belongs to a row: which? */
  showRowsForLines() {
    const { t } = this;
    this.setMode(
      'menu',
      h(
        'div',
        null,
        h('h2', { tabindex: '-1' }, t('map.add.line')),
        h('p', { class: 'help' }, t('map.add.lineOfRow')),
        h(
          'ul',
          { class: 'map-list' },
          this.editor.scene.rows.map((row) =>
            h(
              'li',
              null,
              h(
                'button',
                { type: 'button', class: 'plain thing', onclick: () => this.choose({ type: 'line', id: row.id }, { focus: true }) },
                h('span', null, t('map.line', row.id)),
                [' ', h('span', { class: 'quiet' }, this.lineWords(row.id))],
              ),
            ),
          ),
        ),
      ),
    );
  }

  showAddMenu() {
    const { t } = this;
    const { scene } = this.editor;
    const entry = (label, onclick) => h('li', null, h('button', { type: 'button', class: 'plain thing', onclick }, icon('add'), h('span', null, label)));
    this.setMode(
      'menu',
      h(
        'div',
        null,
        h('h2', { tabindex: '-1' }, t('map.addWhat')),
        h(
          'ul',
          { class: 'map-list' },
          entry(t('map.add.row'), () => this.startAdding('row')),
          forms.FIXTURE_KINDS.map((kind) => entry(t(`map.kind.${kind}`), () => this.startAdding('fixture', kind))),
          entry(t('map.main'), () => this.startAdding('main')),
          scene.rows.length > 0 ? entry(t('map.add.line'), () => this.showRowsForLines()) : null,
          entry(t('map.add.height'), () => this.startAdding('height')),
        ),
      ),
    );
  }

  startMeasure() {
    const { t } = this;
    const { scene } = this.editor;
    const things = [
      ...scene.plants.filter((one) => one.role === 'main').map((one) => ({ label: `${one.id} ${one.speciesName}`, at: [one.x, one.y] })),
      ...scene.fixtures.map((one) => ({ label: one.id, shape: one.shape })),
      { label: t('map.supply'), at: [scene.supply.x, scene.supply.y] },
      ...scene.outline.map((at, i) => ({ label: t('map.corner', i + 1), at })),
    ];
    const element = forms.measureForm(this.formContext(), { things, showBetween: (a, b) => this.between(a, b) });
    this.setMode('measure', element, t('map.hint.measure'));
    this.canvas.startDrawing('LineString');
  }

  between(a, b) {
    const line = ({ shape }) => (shape.type === 'area' ? [...shape.coordinates, shape.coordinates[0]] : shape.coordinates);
    const nearest = (thing, from) => (thing.at ? thing.at : thing.shape.coordinates.length === 1 ? thing.shape.coordinates[0] : nearestOn(line(thing), from).point);
    let from = nearest(a, b.at ?? b.shape.coordinates[0]);
    const to = nearest(b, from);
    from = nearest(a, to);
    const text = this.lengths.text(distance(from, to));
    this.canvas.keepMeasure([from, to], text);
    return text;
  }

  startPhoto() {
    const { t } = this;
    const element = photoForm({
      t,
      lengths: this.lengths,
      photo: this.photo,
      corners: this.editor.scene.outline,
      cancel: () => this.choose(undefined),
      done: async (photo) => {
        try {
          await (photo ? keepPhoto(this.context.siteId, photo) : dropPhoto(this.context.siteId));
        } catch {
          this.context.say(t('map.photo.unkept'));
        }
        this.photo = photo ?? undefined;
        this.canvas.setPhoto(this.photo);
        this.choose(undefined);
        this.context.say(t(photo ? 'map.photo.laid' : 'map.photo.removed'));
      },
    });
    this.setMode('photo', element);
    element.querySelector('h2').tabIndex = -1;
  }

  showLayers() {
    const { t } = this;
    this.setMode('layers', h('div', null, h('h2', { tabindex: '-1' }, t('map.layers')), this.layersBox));
    this.drawLayers();
  }

  drawLayers() {
    const { t } = this;
    const box = (key) =>
      h(
        'label',
        { class: 'choice' },
        h('input', {
          type: 'checkbox',
          checked: this.shown[key],
          onchange: (event) => {
            this.shown = { ...this.shown, [key]: event.target.checked };
            this.canvas.setShown(this.shown);
          },
        }),
        t(`map.layer.${key}`),
      );
    replace(this.layersBox, ['pipes', 'emitters', this.editor.scene.trench.length > 0 ? 'trench' : null, 'heights', 'names', this.photo ? 'photo' : null, 'snap'].filter(Boolean).map(box));
  }

  drawn({ type, coordinates }) {
    const { t } = this;
    if (this.mode === 'plant') {
      this.canvas.sources.draft.clear();
      const form = this.panelForm;
      const species = form?.querySelector('select')?.value;
      if (!species) {
        this.context.say(t('map.problem.species'));
        form?.requestSubmit();
        return;
      }
      const inputs = form.querySelectorAll('input');
      this.addPlant({ species, at: coordinates[0], planted: inputs[0].value, pot: inputs[1].value.trim() }, { again: true });
    } else if (this.mode === 'measure') {
      const text = t('map.measure.is', this.lengths.text(lengthOf(coordinates)));
      this.canvas.keepMeasure(coordinates, this.lengths.text(lengthOf(coordinates)));
      this.panelForm.show(text);
      this.context.say(text);
    } else if (type && this.panelForm?.drawn) {
      this.canvas.sources.draft.clear();
      this.panelForm.drawn(coordinates);
    }
  }

  async addPlant({ species, at, row, planted, pot }, { again = false } = {}) {
    const { t } = this;
    this.lastSpecies = species;
    this.lastPlanted = planted || this.lastPlanted;
    this.lastPot = pot || this.lastPot;
    const near = row
      ? { id: row }
      : again
        ? this.editor.scene.rows.map((one) => ({ id: one.id, ...nearestOn(one.line, at) })).filter((one) => one.away < 0.8).sort((a, b) => a.away - b.away)[0]
        : undefined;
    const before = new Set(this.editor.scene.plants.map((one) => one.id));
    const fields = { planted: planted || this.editor.scene.start, container: pot || this.lastPot };
    const name = this.species.find((one) => one.key === species)?.name ?? species;
    const { turns } = this;
    const saved = await this.editor.edit(t('map.did.addPlant', name), [
      { type: 'addPlant', species, x: round(at[0]), y: round(at[1]), ...(near ? { row: near.id } : {}), fields },
    ]);
    if (saved) {
      const made = this.editor.scene.plants.find((one) => !before.has(one.id));
      this.context.say(t('map.say.added', made ? `${made.id} ${made.speciesName}` : name));
      if (!again && turns === this.turns) {
        this.choose(made ? { type: 'plant', id: made.id } : undefined, { focus: true });
      }
    }
    return saved;
  }

  // ---- Moving ----

  moveOf(plant, place) {
    const row = plant.row && this.editor.scene.rows.find((one) => one.id === plant.row);
    const inRow = row && nearestOn(row.line, place).away < 0.75;
    return { type: 'movePlant', plant: plant.id, x: round(place[0]), y: round(place[1]), ...(row && !inRow ? { offRow: true } : {}) };
  }

  operationsFor(thing, place) {
    return thing.type === 'plant'
      ? [this.moveOf(this.thing(thing), place)]
      : thing.type === 'height'
        ? forms.heightPlace(this.lengths, this.thing(thing), place)
        : forms.supplyChange(this.lengths, place);
  }

  tryMove({ thing, place }, spoken = false) {
    this.trying = { thing, place, spoken };
    this.editor.attempt(this.operationsFor(thing, place));
  }

  async dropped({ thing, place, from }) {
    this.trying = undefined;
    if (distance(place, from) < 0.005) {
      this.sceneCame(this.editor.scene);
      return;
    }
    const saved = await this.editor.edit(this.t('map.did.move', this.nameOf(thing)), this.operationsFor(thing, place));
    if (saved) {
      this.context.say(this.t('map.say.moved', this.nameOf(thing), this.lengths.text(place[0]), this.lengths.text(place[1])));
    } else {
      this.sceneCame(this.editor.scene);
    }
    this.drawPanel();
  }

  reshaped({ thing, shape }) {
    const what = this.thing(thing);
    const operations =
      thing.type === 'outline'
        ? forms.outlineChange(this.lengths, shape.coordinates)
        : thing.type === 'row'
          ? [{ type: 'moveRow', row: thing.id, line: shape.coordinates.map((p) => p.map(round)) }]
          : thing.type === 'line'
            ? forms.lineWay(this.lengths, this.editor.scene.ownLines.find((one) => one.row === thing.id), shape.coordinates)
            : forms.fixtureShape(this.lengths, what, shape);
    this.save(this.t('map.did.move', this.nameOf(thing)), operations);
  }

  /** Moves what is chosen by a step; the change is saved when the keys rest. */
  nudge([dx, dy]) {
    const thing = this.selected;
    if (!thing || this.readOnly || STILL.includes(thing.type)) {
      return;
    }
    const what = this.thing(thing);
    if (thing.type === 'plant' && !what.movable) {
      this.context.say(this.t('map.companion', what.row ?? ''));
      return;
    }
    const step = this.stepSize(this.step);
    clearTimeout(this.nudgeTimer);
    if (['plant', 'supply', 'height'].includes(thing.type)) {
      const from = this.nudging?.place ?? [what.x, what.y];
      let place = [from[0] + dx * step, from[1] + dy * step];
      const row = what.row && this.editor.scene.rows.find((one) => one.id === what.row);
      if (row) {
        const near = nearestOn(row.line, place);
        if (near.away < 0.75) {
          place = near.point;
        }
      }
      this.nudging = { thing, place, from: this.nudging?.from ?? [what.x, what.y] };
      this.canvas.showMoved({ ...thing, plant: thing.type === 'plant' ? what : undefined }, place);
      this.canvas.reveal(thing);
      this.tryMove({ thing, place }, true);
    } else {
      const by = this.nudging?.by ?? [0, 0];
      this.nudging = { thing, by: [by[0] + dx * step, by[1] + dy * step] };
      const feature = this.canvas.featureOf(thing);
      feature.getGeometry().translate(dx * step, dy * step);
      this.context.say(this.t('map.say.by', this.lengths.text(this.nudging.by[0]), this.lengths.text(this.nudging.by[1])));
    }
    this.nudgeTimer = setTimeout(() => this.finishNudge(), 900);
  }

  async finishNudge() {
    clearTimeout(this.nudgeTimer);
    const done = this.nudging;
    this.nudging = undefined;
    if (!done) {
      return;
    }
    const focused = document.activeElement?.getAttribute?.('aria-label');
    if (done.place) {
      await this.dropped(done);
    } else {
      const what = this.thing(done.thing);
      const shape = { ...(what.shape ?? { type: 'line' }), coordinates: moved(what.shape?.coordinates ?? what.line, ...done.by) };
      this.reshaped({ thing: done.thing, shape });
    }
    if (focused && document.activeElement === document.body) {
      [...this.root.querySelectorAll('[aria-label]')].find((one) => one.getAttribute('aria-label') === focused)?.focus();
    }
  }

  dropNudge() {
    clearTimeout(this.nudgeTimer);
    this.nudging = undefined;
    this.trying = undefined;
    this.editor.endAttempt();
    this.sceneCame(this.editor.scene);
  }

  // ---- Saving ----

  async save(label, operations, { gone = false, then, stay } = {}) {
    const { turns } = this;
    const saved = await this.editor.edit(label, operations);
    if (!saved) {
      this.canvas.draw(this.editor.scene);
      return false;
    }
    this.context.say(this.t('map.say.saved', label));
    if (turns !== this.turns) {
      // Whoever has opened something else since then keeps it.
      return true;
    }
    if (stay) {
      stay();
    } else if (gone) {
      const was = this.selected;
      this.choose(undefined);
      this.focusListed(was);
    } else if (then) {
      this.choose(then, { focus: true });
    } else {
      this.endMode();
      this.drawPanel();
      this.panel.querySelector('h2')?.focus();
    }
    return true;
  }

  async undo() {
    if (this.editor.state.canUndo) {
      await this.turnBack(() => this.editor.undo(), 'map.say.undone');
    }
  }

  async redo() {
    if (this.editor.state.canRedo) {
      await this.turnBack(() => this.editor.redo(), 'map.say.redone');
    }
  }

  async turnBack(change, said) {
    const { turns } = this;
    if (await change()) {
      if (turns === this.turns) {
        this.drawPanel();
      }
      this.context.say(this.t(said));
    }
  }

  confirm(question, work) {
    const { t } = this;
    const dialog = h(
      'dialog',
      { 'aria-labelledby': 'map-sure', onclose: () => dialog.remove() },
      h('h2', { id: 'map-sure' }, t('map.sure')),
      h('p', null, question),
      h(
        'div',
        { class: 'row' },
        h('button', { type: 'button', class: 'danger', onclick: () => { dialog.close(); work(); } }, t('map.delete')),
        h('button', { type: 'button', autofocus: true, onclick: () => dialog.close() }, t('map.cancel')),
      ),
    );
    this.root.append(dialog);
    dialog.showModal();
  }

  refused(problem) {
    const { t } = this;
    const reasons = [problem.message, ...(problem.body?.problems ?? []).map((one) => one.message)];
    const text = problem.status === 0 ? t('shell.unreachable') : [...new Set(reasons.map(sentence))].join(' ');
    replace(
      this.banner,
      h(
        'div',
        { class: 'note bad', role: 'alert' },
        icon('warning'),
        h('div', null, h('p', null, h('strong', null, t('map.notSaved'))), h('p', null, text)),
        this.tool('close', t('map.closeNote'), () => replace(this.banner)),
      ),
    );
    this.banner.scrollIntoView({ block: 'nearest' });
  }

  /** Somebody else, or another tab, saved meanwhile. */
  stale(edit) {
    const { t } = this;
    const reload = async (again) => {
      try {
        await this.editor.reload();
        replace(this.banner);
        // What was typed stays, whatever the other one changed.
        this.refreshPanel();
        if (again && edit) {
          await this.save(edit.label, edit.operations);
        } else {
          this.context.say(t('map.say.newest'));
        }
      } catch (problem) {
        this.refused(problem);
      }
    };
    replace(
      this.banner,
      h(
        'div',
        { class: 'note caution', role: 'alert' },
        icon('warning'),
        h(
          'div',
          null,
          h('p', null, h('strong', null, t('map.stale'))),
          h('p', null, t(edit ? 'map.staleEdit' : 'map.staleLook')),
          h(
            'div',
            { class: 'row' },
            h('button', { type: 'button', class: 'primary', onclick: () => reload(false) }, t('map.loadNewest')),
            edit ? h('button', { type: 'button', onclick: () => reload(true) }, t('map.loadAgain')) : null,
          ),
        ),
      ),
    );
    this.banner.scrollIntoView({ block: 'nearest' });
  }

  async lookForOthers() {
    try {
      // A change that waits to be made again is not to be forgotten for a mere look.
      if (!this.banner.hasChildNodes() && (await this.editor.isStale()) && !this.banner.hasChildNodes()) {
        this.stale(undefined);
      }
    } catch {
      // Without a connection the next save tells.
    }
  }

  // ---- Keys ----

  key(event) {
    const typing = event.target.closest?.('input, select, textarea');
    const command = event.ctrlKey || event.metaKey;
    if (command && !typing && !this.readOnly && event.key.toLowerCase() === 'z') {
      event.preventDefault();
      event.shiftKey ? this.redo() : this.undo();
    } else if (command && !typing && !this.readOnly && event.key.toLowerCase() === 'y') {
      event.preventDefault();
      this.redo();
    } else if (event.key === 'Escape' && !document.querySelector('dialog[open]')) {
      if (this.nudging) {
        this.dropNudge();
      } else if (this.mode || this.selected) {
        const was = this.selected;
        this.choose(undefined);
        this.focusListed(was);
      }
    }
  }

  mapKey(event) {
    const arrow = ARROWS[event.key];
    if (event.target !== this.mapElement || event.ctrlKey || event.altKey || event.metaKey) {
      return;
    }
    if (arrow) {
      event.preventDefault();
      if (this.selected && !event.shiftKey) {
        this.nudge(arrow);
      } else {
        this.canvas.pan(...arrow);
      }
    } else if (event.key === '+' || event.key === '=') {
      this.canvas.zoom(1.5);
    } else if (event.key === '-') {
      this.canvas.zoom(1 / 1.5);
    } else if (event.key === 'Enter' && this.nudging) {
      this.finishNudge();
    } else if (event.key === 'Delete' && this.selected && !this.readOnly) {
      this.panel.querySelector('button.danger')?.click();
    }
  }
}

/** A reason with a capital letter and a full stop. */
function sentence(text) {
  const whole = String(text).trim();
  return whole.charAt(0).toUpperCase() + whole.slice(1) + (/[.!?]$/.test(whole) ? '' : '.');
}

/** To the millimetre. */
function round(value) {
  return Math.round(value * 1000) / 1000;
}
