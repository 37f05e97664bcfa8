// The drawing of a scene, with OpenLayers on a plain plane of metres.
/* global ol */
import { distance, nearestOn, onGround } from './geometry.js';
import { placing } from './photo.js';

/** The colours of the theme, for a canvas that knows no style sheet. */
function paints() {
  const style = getComputedStyle(document.documentElement);
  const colour = (name) => style.getPropertyValue(`--${name}`).trim();
  return Object.fromEntries(
    [
      'map-ground', 'map-land', 'map-edge', 'map-grid', 'map-building', 'map-paving', 'map-fixture', 'map-main', 'map-main-line',
      'map-companion', 'map-companion-line', 'map-bad', 'map-row', 'map-pipe', 'map-lateral', 'map-emitter', 'map-choice', 'ink', 'surface',
    ].map((name) => [name.replace('map-', ''), colour(name)]),
  );
}

function translucent(hex, share) {
  const value = Number.parseInt(hex.slice(1), 16);
  return `rgba(${value >> 16}, ${(value >> 8) & 255}, ${value & 255}, ${share})`;
}

const FONT = 'system-ui, "Segoe UI", Roboto, "Noto Sans", "DejaVu Sans", sans-serif';

export class MapCanvas extends EventTarget {
  constructor(target, { lengths, shown, pixelRatio = Math.min(window.devicePixelRatio, 2) }) {
    super();
    this.lengths = lengths;
    this.shown = shown;
    this.year = 5;
    this.selected = undefined;
    this.scene = undefined;
    this.editable = true;
    this.paints = paints();
    this.sources = {};
    const layer = (name, zIndex, style, more = {}) => {
      this.sources[name] = new ol.source.Vector(more);
      return new ol.layer.Vector({
        source: this.sources[name],
        style: style.bind(this),
        zIndex,
        updateWhileAnimating: true,
        updateWhileInteracting: true,
        declutter: more.declutter ?? false,
      });
    };
    const projection = new ol.proj.Projection({
      code: 'site-metres',
      units: 'm',
      extent: [-20000, -20000, 20000, 20000],
      getPointResolution: (resolution) => resolution,
    });
    this.photoLayer = new ol.layer.Image({ zIndex: 1 });
    this.layers = {
      grid: layer('grid', 0, this.gridStyle),
      land: layer('land', 2, this.landStyle),
      fixtures: layer('fixtures', 3, this.fixtureStyle),
      rows: layer('rows', 4, this.rowStyle),
      trench: layer('trench', 5, this.trenchStyle),
      pipes: layer('pipes', 6, this.pipeStyle),
      ways: layer('ways', 6, this.wayStyle),
      plants: layer('plants', 7, this.plantStyle),
      emitters: layer('emitters', 8, this.emitterStyle),
      heights: layer('heights', 8, this.heightStyle),
      supply: layer('supply', 9, this.supplyStyle),
      guides: layer('guides', 10, this.guideStyle),
      draft: layer('draft', 11, this.draftStyle),
    };
    const interactions = ol.interaction.defaults.defaults ?? ol.interaction.defaults;
    this.map = new ol.Map({
      target,
      pixelRatio,
      layers: [this.photoLayer, ...Object.values(this.layers)],
      controls: [
        new ol.control.ScaleLine({ units: lengths.us ? 'us' : 'metric', minWidth: 70 }),
      ],
      interactions: interactions({ altShiftDragRotate: false, pinchRotate: false, keyboard: false, doubleClickZoom: false }),
      view: new ol.View({
        projection,
        center: [0, 0],
        resolution: 0.1,
        minResolution: 0.004,
        maxResolution: 5,
        enableRotation: false,
      }),
    });
    this.setShown(shown);
    this.addDragging();
    this.map.on('singleclick', (event) => this.clicked(event));
    this.map.on('pointermove', (event) => {
      if (!event.dragging) {
        this.map.getTargetElement().classList.toggle('over', Boolean(this.thingAt(event.pixel)));
      }
    });
    this.map.on('moveend', () => this.noteView());
    this.themeWatch = new MutationObserver(() => this.repaint());
    this.themeWatch.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
    this.media = matchMedia('(prefers-color-scheme: dark)');
    this.onMedia = () => this.repaint();
    this.media.addEventListener('change', this.onMedia);
  }

  dispose() {
    this.themeWatch.disconnect();
    this.media.removeEventListener('change', this.onMedia);
    this.map.setTarget(null);
    this.map.dispose();
  }

  repaint() {
    this.paints = paints();
    Object.values(this.layers).forEach((layer) => layer.changed());
  }

  tell(type, detail) {
    this.dispatchEvent(new CustomEvent(type, { detail }));
  }

  // ---- What is drawn ----

  draw(scene) {
    const first = !this.scene;
    this.scene = scene;
    const put = (name, features) => {
      this.sources[name].clear(true);
      this.sources[name].addFeatures(features);
    };
    const feature = (geometry, thing) => {
      const one = new ol.Feature({ geometry });
      one.set('thing', thing);
      return one;
    };
    put('grid', [new ol.Feature(new ol.geom.MultiLineString(this.grid(scene.bounds)))]);
    put('land', [feature(new ol.geom.Polygon([closed(scene.outline)]), { type: 'outline', id: 'outline' })]);
    put(
      'fixtures',
      scene.fixtures.map((one) => feature(shapeOf(one.shape), { type: 'fixture', id: one.id, kind: one.kind, height: one.height })),
    );
    put('rows', scene.rows.map((row) => feature(new ol.geom.LineString(row.line), { type: 'row', id: row.id })));
    put(
      'heights',
      scene.heights.map((one) => feature(new ol.geom.Point([one.x, one.y]), { type: 'height', id: String(one.index), height: one.height })),
    );
    put('trench', [
      ...scene.trench.map((one) => feature(new ol.geom.LineString(one.line), { type: 'trench', part: one })),
      ...scene.crossings.map((one) => feature(new ol.geom.Point([one.x, one.y]), { type: 'crossing', crossing: one })),
    ]);
    put('pipes', [
      ...scene.pipes.map((pipe) =>
        feature(new ol.geom.LineString(pipe.line), pipe.type === 'main' ? { type: 'main', id: 'main', pipe } : { type: 'line', id: pipe.row, pipe }),
      ),
    ]);
    put(
      'ways',
      scene.ownLines.filter((one) => one.route.length > 1).map((one) => feature(new ol.geom.LineString(one.route), { type: 'line', id: one.row })),
    );
    put(
      'plants',
      [...scene.plants]
        .sort((a, b) => b.fullCrownDiameter - a.fullCrownDiameter)
        .map((plant) => feature(new ol.geom.Point([plant.x, plant.y]), { type: 'plant', id: plant.id, plant })),
    );
    put('emitters', scene.emitters.map((one) => feature(new ol.geom.Point([one.x, one.y]), { type: 'emitter', emitter: one })));
    put('supply', [feature(new ol.geom.Point([scene.supply.x, scene.supply.y]), { type: 'supply', id: 'supply' })]);
    if (first) {
      this.fit();
    }
    this.select(this.selected);
  }

  /**
   * Draws the map once onto a canvas element, at once, for paper.
   *
   * `size` in pixels of the screen, `resolution` in metres a pixel, `dots` of the canvas to a pixel.
   */
  picture({ size, centre, resolution, dots, onto }) {
    const view = this.map.getView();
    view.setCenter(centre);
    view.setResolution(resolution);
    this.map.setSize(size);
    // A photo is ready for the second drawing only.
    this.map.renderSync();
    this.map.renderSync();
    [onto.width, onto.height] = size.map((length) => Math.round(length * dots));
    // Drawn aside and put in as a finished picture: what is drawn onto an element while its page is
    // printed may be drawn again by the browser, to another size.
    const aside = new OffscreenCanvas(onto.width, onto.height);
    const pen = aside.getContext('2d');
    pen.fillStyle = '#ffffff';
    pen.fillRect(0, 0, aside.width, aside.height);
    this.map
      .getViewport()
      .querySelectorAll('.ol-layer canvas')
      .forEach((layer) => {
        if (layer.width > 0) {
          const opacity = layer.parentNode.style.opacity || layer.style.opacity;
          pen.globalAlpha = opacity === '' ? 1 : Number(opacity);
          pen.drawImage(layer, 0, 0, aside.width, aside.height);
        }
      });
    onto.getContext('bitmaprenderer').transferFromImageBitmap(aside.transferToImageBitmap());
    return onto;
  }

  grid({ minX, minY, maxX, maxY }) {
    const step = 5 * (this.lengths.us ? 2 * this.lengths.size : 1);
    const pad = 40;
    const lines = [];
    const from = (value) => Math.floor((value - pad) / step) * step;
    for (let x = from(minX); x <= maxX + pad; x += step) {
      lines.push([[x, from(minY)], [x, maxY + pad]]);
    }
    for (let y = from(minY); y <= maxY + pad; y += step) {
      lines.push([[from(minX), y], [maxX + pad, y]]);
    }
    return lines;
  }

  fit() {
    const { minX, minY, maxX, maxY } = this.scene.bounds;
    this.map.updateSize();
    this.map.getView().fit([minX, minY, maxX, maxY], { padding: [64, 46, 60, 52] });
    // The library tells of no move where the first picture that it draws is this one.
    this.noteView();
  }

  /** Says where the middle of the map lies and how many metres a pixel is, for whoever looks from outside. */
  noteView() {
    const view = this.map.getView();
    this.map.getTargetElement().dataset.view = [...view.getCenter(), view.getResolution()].join(' ');
  }

  zoom(by) {
    const view = this.map.getView();
    view.animate({ resolution: view.getResolution() / by, duration: calm() ? 0 : 150 });
  }

  pan(dx, dy) {
    const view = this.map.getView();
    const [x, y] = view.getCenter();
    const step = view.getResolution() * 80;
    view.setCenter([x + dx * step, y + dy * step]);
  }

  setYear(year) {
    this.year = year;
    this.layers.plants.changed();
  }

  setShown(shown) {
    this.shown = shown;
    this.layers.pipes.setVisible(shown.pipes);
    this.layers.emitters.setVisible(shown.emitters);
    this.layers.heights.setVisible(shown.heights);
    this.layers.trench.setVisible(shown.trench);
    this.photoLayer.setVisible(shown.photo);
    this.layers.plants.changed();
  }

  crown(plant) {
    return this.year > 10 ? plant.fullCrownDiameter : plant.crownDiameterByYear[this.year] ?? 0;
  }

  // ---- Styles ----

  gridStyle() {
    return new ol.style.Style({ stroke: new ol.style.Stroke({ color: this.paints.grid, width: 1 }) });
  }

  landStyle(feature) {
    const chosen = this.isSelected(feature);
    const share = this.photo && this.shown.photo ? 0.15 : 1;
    return new ol.style.Style({
      fill: new ol.style.Fill({ color: translucent(this.paints.land, share) }),
      stroke: new ol.style.Stroke({ color: chosen ? this.paints.choice : this.paints.edge, width: chosen ? 4 : 2.5 }),
    });
  }

  fixtureStyle(feature, resolution) {
    const { kind, id } = feature.get('thing');
    const chosen = this.isSelected(feature);
    const line = feature.getGeometry().getType() === 'LineString';
    const round = feature.getGeometry().getType() === 'Circle';
    const buried = kind === 'buried-service' || kind === 'septic-field';
    const fill =
      kind === 'building' ? this.paints.building : kind === 'paving' ? this.paints.paving : this.paints.fixture;
    return new ol.style.Style({
      fill: new ol.style.Fill({ color: translucent(fill, buried ? 0.35 : 0.9) }),
      stroke: new ol.style.Stroke({
        color: chosen ? this.paints.choice : kind === 'buried-service' ? this.paints.bad : this.paints.edge,
        width: chosen ? 4 : line ? 3 : 1.5,
        lineDash: buried ? [8, 6] : undefined,
      }),
      text: resolution < (kind === 'building' ? 0.16 : 0.09) ? this.label(id, { placement: line ? 'line' : 'point', offsetY: line ? -9 : round ? -14 : 0, size: 13 }) : undefined,
    });
  }

  rowStyle(feature, resolution) {
    const chosen = this.isSelected(feature);
    const { id } = feature.get('thing');
    const line = new ol.style.Style({
      stroke: new ol.style.Stroke({
        color: chosen ? this.paints.choice : this.paints.row,
        width: chosen ? 4 : 1.5,
        lineDash: [2, 6],
        lineCap: 'round',
      }),
    });
    const start = new ol.style.Style({
      geometry: new ol.geom.Point(feature.getGeometry().getFirstCoordinate()),
      text: resolution < 0.3 ? this.label(id, { offsetX: -14, size: 14, weight: 700 }) : undefined,
    });
    return [line, start];
  }

  /** A measured height: a small triangle, as on a surveyor's plan, with the height beside it. */
  heightStyle(feature, resolution) {
    const chosen = this.isSelected(feature);
    const { height } = feature.get('thing');
    return new ol.style.Style({
      image: new ol.style.RegularShape({
        points: 3,
        radius: chosen ? 9 : 6.5,
        fill: new ol.style.Fill({ color: chosen ? this.paints.choice : this.paints.edge }),
        stroke: new ol.style.Stroke({ color: this.paints.surface, width: 1.5 }),
      }),
      text: resolution < 0.25 || chosen ? this.label(this.lengths.text(height), { offsetY: 14, size: 12 }) : undefined,
    });
  }

  pipeStyle(feature) {
    const { pipe } = feature.get('thing');
    const main = pipe.type === 'main';
    const chosen = this.isSelected(feature);
    const colour = chosen ? this.paints.choice : main ? this.paints.pipe : this.paints.lateral;
    return new ol.style.Style({ stroke: new ol.style.Stroke({ color: colour, width: (main ? 4 : pipe.laid ? 3 : 2) + (chosen ? 1.5 : 0) }) });
  }

  /** The trench: a broad band below the main, its parts numbered as in the report; a cross where a service is met. */
  trenchStyle(feature, resolution) {
    const { part } = feature.get('thing');
    if (!part) {
      return new ol.style.Style({
        image: new ol.style.RegularShape({
          points: 4,
          radius: 10,
          radius2: 0,
          angle: Math.PI / 4,
          stroke: new ol.style.Stroke({ color: this.paints.bad, width: 3.5 }),
        }),
        zIndex: 2,
      });
    }
    return new ol.style.Style({
      stroke: new ol.style.Stroke({ color: translucent(this.paints.row, 0.45), width: 11, lineCap: 'butt' }),
      text: resolution < 0.13 ? this.label(resolution < 0.05 ? part.text : String(part.number), { placement: 'line', size: 13, weight: 700, offsetY: -12 }) : undefined,
    });
  }

  /** The way of a line as its owner drew it, to be taken by its corners once it is chosen. */
  wayStyle(feature) {
    return this.isSelected(feature)
      ? new ol.style.Style({ stroke: new ol.style.Stroke({ color: this.paints.choice, width: 3, lineDash: [8, 5] }) })
      : undefined;
  }

  emitterStyle(feature, resolution) {
    if (resolution > 0.12) {
      return undefined;
    }
    return new ol.style.Style({
      image: new ol.style.Circle({
        radius: Math.max(2, Math.min(4.5, 0.13 / resolution)),
        fill: new ol.style.Fill({ color: this.paints.emitter }),
        stroke: new ol.style.Stroke({ color: this.paints.surface, width: 1 }),
      }),
    });
  }

  plantStyle(feature, resolution) {
    const { plant } = feature.get('thing');
    const chosen = this.isSelected(feature);
    const main = plant.role === 'main';
    const at = feature.getGeometry().getCoordinates();
    const radius = this.crown(plant) / 2;
    const bad = (this.conflicting ?? new Set()).has(plant.id);
    const fill = main ? this.paints.main : this.paints.companion;
    const edge = bad ? this.paints.bad : main ? this.paints['main-line'] : this.paints['companion-line'];
    const styles = [];
    if (radius > 0.02) {
      styles.push(
        new ol.style.Style({
          geometry: new ol.geom.Circle(at, radius),
          fill: new ol.style.Fill({ color: translucent(fill, 0.5) }),
          stroke: new ol.style.Stroke({
            color: chosen ? this.paints.choice : edge,
            width: chosen ? 3.5 : bad ? 2.5 : 1.25,
            // A conflict is told by the dashes too, for who does not see the colour.
            lineDash: bad ? [7, 4] : undefined,
          }),
          zIndex: main ? 1 : 2,
        }),
      );
    }
    if (main || resolution < 0.06 || chosen) {
      styles.push(
        new ol.style.Style({
          image: new ol.style.Circle({
            radius: main ? 4.5 : 3,
            fill: new ol.style.Fill({ color: edge }),
            stroke: new ol.style.Stroke({ color: chosen ? this.paints.choice : this.paints.surface, width: chosen ? 3 : 1.5 }),
          }),
          text:
            this.shown.names && (main ? resolution < 0.13 : resolution < 0.012)
              ? this.label(resolution < 0.035 ? `${plant.id}\n${plant.speciesName}` : plant.id, { offsetY: 17, size: 13, baseline: 'top', top: true })
              : undefined,
          zIndex: 3,
        }),
      );
    }
    return styles;
  }

  label(text, { offsetX = 0, offsetY = 0, size = 12, weight = 600, placement = 'point', top = false } = {}) {
    return new ol.style.Text({
      text,
      font: `${weight} ${size}px ${FONT}`,
      offsetX,
      offsetY: top ? offsetY - 8 : offsetY,
      placement,
      textBaseline: top ? 'top' : 'middle',
      fill: new ol.style.Fill({ color: this.paints.ink }),
      stroke: new ol.style.Stroke({ color: this.paints.surface, width: 4 }),
      overflow: true,
    });
  }

  supplyStyle(feature) {
    const chosen = this.isSelected(feature);
    return [
      new ol.style.Style({
        image: new ol.style.Circle({
          radius: 9,
          fill: new ol.style.Fill({ color: this.paints.pipe }),
          stroke: new ol.style.Stroke({ color: chosen ? this.paints.choice : this.paints.surface, width: chosen ? 4 : 2.5 }),
        }),
      }),
      new ol.style.Style({
        image: new ol.style.RegularShape({
          points: 3,
          radius: 5,
          fill: new ol.style.Fill({ color: this.paints.surface }),
        }),
      }),
    ];
  }

  guideStyle(feature) {
    const bad = feature.get('bad');
    return new ol.style.Style({
      stroke: new ol.style.Stroke({ color: bad ? this.paints.bad : this.paints.choice, width: 2, lineDash: [5, 5] }),
      text: feature.get('text')
        ? new ol.style.Text({
            text: feature.get('text'),
            font: `700 14px ${FONT}`,
            fill: new ol.style.Fill({ color: this.paints.surface }),
            backgroundFill: new ol.style.Fill({ color: bad ? this.paints.bad : this.paints.choice }),
            padding: [3, 5, 2, 5],
            overflow: true,
          })
        : undefined,
    });
  }

  draftStyle(feature) {
    return [
      new ol.style.Style({
        fill: new ol.style.Fill({ color: translucent(this.paints.choice, 0.15) }),
        stroke: new ol.style.Stroke({ color: this.paints.choice, width: 3 }),
        image: new ol.style.Circle({
          radius: 7,
          fill: new ol.style.Fill({ color: this.paints.choice }),
          stroke: new ol.style.Stroke({ color: this.paints.surface, width: 2 }),
        }),
        text: feature.get('text') ? this.label(feature.get('text'), { size: 14, offsetY: -16 }) : undefined,
      }),
    ];
  }

  // ---- Choosing ----

  isSelected(feature) {
    const thing = feature.get('thing');
    return Boolean(this.selected && thing && thing.type === this.selected.type && thing.id === this.selected.id);
  }

  featureOf({ type, id }) {
    const source = { outline: 'land', fixture: 'fixtures', row: 'rows', plant: 'plants', supply: 'supply', height: 'heights', main: 'pipes', line: 'pipes' }[type];
    return source && this.sources[source].getFeatures().find((one) => one.get('thing').type === type && one.get('thing').id === id);
  }

  /** What is under a pixel: of several plants and heights the one whose stem or mark is nearest. */
  thingAt(pixel) {
    const place = this.map.getCoordinateFromPixel(pixel);
    const found = [];
    this.map.forEachFeatureAtPixel(
      pixel,
      (feature) => {
        const thing = feature.get('thing');
        if (thing && thing.id) {
          found.push({ feature, thing });
        }
      },
      { hitTolerance: 8 },
    );
    const rank = { supply: 0, height: 1, plant: 1, row: 2, line: 2, main: 2, fixture: 3, outline: 4 };
    const near = ({ feature, thing }) => (rank[thing.type] === 1 || rank[thing.type] === 2 ? distance(feature.getGeometry().getClosestPoint(place), place) : 0);
    const inside = ({ thing }) => thing.type !== 'outline';
    const edgeOnly = ({ thing }) =>
      thing.type === 'outline' && nearestOn(closed(this.scene.outline), place).away < 10 * this.map.getView().getResolution();
    return found
      .filter((one) => inside(one) || edgeOnly(one))
      .sort((a, b) => rank[a.thing.type] - rank[b.thing.type] || near(a) - near(b))[0];
  }

  clicked(event) {
    if (this.tool) {
      return;
    }
    const found = this.thingAt(event.pixel);
    this.tell('choose', { thing: found ? { type: found.thing.type, id: found.thing.id } : undefined });
  }

  select(thing) {
    this.selected = thing;
    Object.values(this.layers).forEach((layer) => layer.changed());
    this.editShape(thing);
  }

  /** Moves the view so that a thing can be seen. */
  reveal(thing) {
    const feature = this.featureOf(thing);
    if (!feature) {
      return;
    }
    const view = this.map.getView();
    const shown = view.calculateExtent(this.map.getSize());
    const centre = ol.extent.getCenter(feature.getGeometry().getExtent());
    if (!ol.extent.containsCoordinate(shown, centre)) {
      view.setCenter(centre);
    }
  }

  // ---- Moving ----

  addDragging() {
    let held;
    const drag = new ol.interaction.Pointer({
      handleDownEvent: (event) => {
        if (this.tool || !this.editable || event.originalEvent.button > 0) {
          return false;
        }
        const found = this.thingAt(event.pixel);
        const movable =
          found && ((found.thing.type === 'plant' && found.thing.plant.movable) || ['supply', 'height'].includes(found.thing.type));
        // On a finger's screen a plant is chosen first, so that moving the map never moves a tree.
        const touch = event.originalEvent.pointerType === 'touch';
        if (!movable || (touch && !this.isSelected(found.feature))) {
          return false;
        }
        const at = found.feature.getGeometry().getCoordinates();
        held = { ...found, from: at, offset: [at[0] - event.coordinate[0], at[1] - event.coordinate[1]], moved: false };
        return true;
      },
      handleDragEvent: (event) => {
        if (!held.moved) {
          held.moved = true;
          this.tell('choose', { thing: { type: held.thing.type, id: held.thing.id }, dragging: true });
          this.map.getTargetElement().classList.add('dragging');
        }
        const wanted = [event.coordinate[0] + held.offset[0], event.coordinate[1] + held.offset[1]];
        const { place, row } = this.snapped(held.thing, wanted);
        held.place = place;
        held.row = row;
        this.showMoved(held.thing, place);
        this.tell('move', { thing: held.thing, place, row });
      },
      handleUpEvent: () => {
        this.map.getTargetElement().classList.remove('dragging');
        if (held.moved) {
          this.tell('drop', { thing: held.thing, place: held.place, row: held.row, from: held.from });
        }
        held = undefined;
        return false;
      },
    });
    this.map.addInteraction(drag);
  }

  /** Where a thing comes to stand: on its row while it is near to it, else on the decimetre. */
  snapped(thing, wanted) {
    const rowId = thing.plant?.row;
    const row = rowId && this.scene.rows.find((one) => one.id === rowId);
    if (row && this.shown.snap) {
      const near = nearestOn(row.line, wanted);
      if (near.away < Math.max(0.75, 14 * this.map.getView().getResolution())) {
        return { place: near.point, row: rowId };
      }
    }
    return { place: this.shown.snap ? wanted.map((value) => Math.round(value * 10) / 10) : wanted, row: undefined };
  }

  showMoved(thing, place) {
    const feature = this.featureOf(thing);
    feature?.getGeometry().setCoordinates(place);
    this.sources.guides.clear(true);
    if (thing.type === 'plant') {
      const others = this.scene.plants
        .filter((one) => one.id !== thing.id && (one.role === 'main' || thing.plant.role !== 'main'))
        .map((one) => ({ one, away: distance([one.x, one.y], place) }))
        .sort((a, b) => a.away - b.away)
        .slice(0, 2);
      this.sources.guides.addFeatures(
        others.map(({ one, away }) => {
          const guide = new ol.Feature(new ol.geom.LineString([place, [one.x, one.y]]));
          guide.set('text', this.lengths.text(away));
          guide.set('bad', away < (thing.plant.fullCrownDiameter + one.fullCrownDiameter) / 4);
          return guide;
        }),
      );
    }
  }

  endMove() {
    this.sources.guides.clear();
  }

  /** Plants that conflict with something, as the newest figures say. */
  setConflicts(conflicts) {
    this.conflicting = new Set(conflicts.flatMap(({ a, b }) => [a, b]));
    this.layers.plants.changed();
  }

  // ---- Shapes ----

  editShape(thing) {
    this.map.removeInteraction(this.modify);
    this.map.removeInteraction(this.translate);
    this.map.removeInteraction(this.snap);
    this.modify = this.translate = this.snap = undefined;
    if (!thing || this.tool || !this.editable || !['outline', 'fixture', 'row', 'line'].includes(thing.type)) {
      return;
    }
    const way = () => this.sources.ways.getFeatures().find((one) => one.get('thing').id === thing.id);
    const feature = thing.type === 'line' ? way() : this.featureOf(thing);
    if (!feature) {
      return;
    }
    const features = new ol.Collection([feature]);
    const ended = () => this.tell('reshape', { thing, shape: shapeFrom(feature.getGeometry()) });
    if (!['outline', 'line'].includes(thing.type)) {
      this.translate = new ol.interaction.Translate({ features, hitTolerance: 6 });
      this.translate.on('translateend', ended);
      this.map.addInteraction(this.translate);
    }
    this.modify = new ol.interaction.Modify({ features, pixelTolerance: 14, style: (one) => this.draftStyle(one) });
    this.modify.on('modifyend', ended);
    this.map.addInteraction(this.modify);
    this.snap = this.addSnap();
  }

  addSnap() {
    const features = new ol.Collection([
      ...this.sources.land.getFeatures(),
      ...this.sources.fixtures.getFeatures(),
      ...this.sources.rows.getFeatures(),
    ]);
    const snap = new ol.interaction.Snap({ features, pixelTolerance: 10 });
    if (this.shown.snap) {
      this.map.addInteraction(snap);
    }
    return snap;
  }

  /** Lets the owner draw: 'Point', 'LineString' or 'Polygon'. */
  startDrawing(type, { freehandClose = false } = {}) {
    this.stopDrawing();
    this.tool = type;
    this.editShape(undefined);
    this.drawing = new ol.interaction.Draw({
      source: this.sources.draft,
      type,
      style: (one) => this.measured(one),
    });
    this.drawing.on('drawstart', () => this.sources.draft.clear());
    this.drawing.on('drawend', (event) => {
      const coordinates = shapeFrom(event.feature.getGeometry()).coordinates;
      // The source gets the drawing after this event; it is taken out again by who listens.
      setTimeout(() => this.tell('drawn', { type, coordinates, freehandClose }), 0);
    });
    this.map.addInteraction(this.drawing);
    this.drawSnap = this.addSnap();
    this.map.getTargetElement().classList.add('drawing');
  }

  /** The drawing with the length of its last side written beside it. */
  measured(feature) {
    const geometry = feature.getGeometry();
    const styles = this.draftStyle(feature);
    const points =
      geometry.getType() === 'LineString' ? geometry.getCoordinates() : geometry.getType() === 'Polygon' ? geometry.getCoordinates()[0] : [];
    for (let i = 1; i < points.length; i += 1) {
      const [a, b] = [points[i - 1], points[i]];
      if (distance(a, b) > 12 * this.map.getView().getResolution()) {
        styles.push(
          new ol.style.Style({
            geometry: new ol.geom.Point([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]),
            text: this.label(this.lengths.text(distance(a, b)), { size: 14 }),
          }),
        );
      }
    }
    return styles;
  }

  finishDrawing() {
    this.drawing?.finishDrawing();
  }

  stopDrawing() {
    this.map.removeInteraction(this.drawing);
    this.map.removeInteraction(this.drawSnap);
    this.drawing = this.drawSnap = undefined;
    this.tool = undefined;
    this.sources.draft.clear();
    this.map.getTargetElement()?.classList.remove('drawing');
    this.select(this.selected);
  }

  /** Marks a place that is to be said more of before anything is made there. */
  mark(place) {
    this.sources.draft.clear();
    this.sources.draft.addFeature(new ol.Feature(new ol.geom.Point(place)));
  }

  /** Keeps a measured line in sight. */
  keepMeasure(points, text) {
    this.sources.draft.clear();
    const feature = new ol.Feature(new ol.geom.LineString(points));
    this.sources.draft.addFeature(feature);
    feature.set('text', text);
  }

  // ---- Photo ----

  setPhoto(photo) {
    this.photo = photo;
    if (!photo) {
      this.photoLayer.setSource(null);
      this.layers.land.changed();
      return;
    }
    const way = placing(photo);
    const corners = [[0, 0], [photo.image.width, 0], [photo.image.width, photo.image.height], [0, photo.image.height]].map((p) =>
      onGround(way, p),
    );
    this.photoLayer.setOpacity(photo.opacity);
    this.photoLayer.setSource(
      new ol.source.ImageCanvas({
        ratio: 1,
        canvasFunction: (extent, resolution, pixelRatio, size) => {
          const canvas = document.createElement('canvas');
          [canvas.width, canvas.height] = size;
          const pen = canvas.getContext('2d');
          const scale = pixelRatio / resolution;
          const [minX, , , maxY] = extent;
          // Picture to ground to canvas, whose rows count downwards.
          pen.setTransform(
            way.a * scale,
            -way.b * scale,
            way.b * scale,
            way.a * scale,
            (way.e - minX) * scale,
            (maxY - way.f) * scale,
          );
          pen.drawImage(photo.image, 0, 0);
          return canvas;
        },
      }),
    );
    this.layers.land.changed();
    return corners;
  }
}

function calm() {
  return matchMedia('(prefers-reduced-motion: reduce)').matches;
}

function closed(corners) {
  return [...corners, corners[0]];
}

function shapeOf({ type, coordinates, radius }) {
  if (type === 'area') {
    return new ol.geom.Polygon([closed(coordinates)]);
  }
  return type === 'line' ? new ol.geom.LineString(coordinates) : new ol.geom.Circle(coordinates[0], radius);
}

function shapeFrom(geometry) {
  switch (geometry.getType()) {
    case 'Polygon':
      return { type: 'area', coordinates: geometry.getCoordinates()[0].slice(0, -1) };
    case 'Circle':
      return { type: 'round', coordinates: [geometry.getCenter()], radius: geometry.getRadius() };
    case 'Point':
      return { type: 'point', coordinates: [geometry.getCoordinates()] };
    default:
      return { type: 'line', coordinates: geometry.getCoordinates() };
  }
}
