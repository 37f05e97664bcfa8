// The map on a sheet of paper: to a scale that a ruler knows, with a scale bar, an arrow to the north,
// and what the signs mean. What is shown on the screen, and the year of the crowns, holds for the paper.
import { add, h, svg } from '../dom.js';
import { icon } from '../icons.js';
import { MapCanvas } from './canvas.js';

const MM_PER_PIXEL = 25.4 / 96;
/** Width and height, millimetres, that both A4 and Letter leave for the drawing, upright and across. */
const ROOM = { tall: [190, 214], wide: [259, 146] };
/** Room for names at the edge of the land, millimetres. */
const EDGE = 7;
const METRIC = [25, 50, 100, 125, 200, 250, 300, 400, 500, 750, 1000, 1250, 1500, 2000, 2500, 4000, 5000, 10000, 20000];
/** One inch stands for 5, 10, 20 ... feet. */
const US = [5, 10, 20, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400, 500, 1000, 2000].map((feet) => feet * 12);

/** The greatest usual scale at which a piece of land fits a sheet, and how the sheet lies. */
export function scaleFor({ minX, minY, maxX, maxY }, us) {
  const fits = (scale, [width, height]) =>
    ((maxX - minX) * 1000) / scale + 2 * EDGE <= width && ((maxY - minY) * 1000) / scale + 2 * EDGE <= height;
  const scales = us ? US : METRIC;
  for (const scale of scales) {
    for (const way of ['tall', 'wide']) {
      if (fits(scale, ROOM[way])) {
        return { scale, way };
      }
    }
  }
  return { scale: scales.at(-1), way: 'wide' };
}

/** A round length that makes a scale bar of 4 to 10 centimetres, in the reader's unit. */
function barLength(scale, size) {
  const millimetres = (length) => (length * size * 1000) / scale;
  const lengths = [1, 2, 4, 5, 10, 20, 40, 50, 100, 200, 400, 500, 1000];
  return lengths.filter((one) => millimetres(one) <= 100).at(-1) ?? 1;
}

/** Puts a sheet after an element while the page is printed. Returns a function that stops this. */
export function printsMap(root, about) {
  let sheet;
  const page = document.documentElement;
  const after = () => {
    if (!sheet) {
      return;
    }
    sheet.remove();
    sheet = undefined;
    page.classList.remove('map-tall', 'map-wide');
  };
  const before = () => {
    after();
    const now = about();
    if (!now.scene) {
      return;
    }
    const { scale, way } = scaleFor(now.scene.bounds, now.lengths.us);
    sheet = sheetOf(now, scale, way);
    page.classList.add(`map-${way}`);
    root.append(sheet);
  };
  window.addEventListener('beforeprint', before);
  window.addEventListener('afterprint', after);
  return () => {
    window.removeEventListener('beforeprint', before);
    window.removeEventListener('afterprint', after);
    after();
  };
}

function sheetOf({ t, scene, lengths, shown, year, yearText, photo, name, day }, scale, way) {
  const { minX, minY, maxX, maxY } = scene.bounds;
  const width = Math.min(ROOM[way][0], ((maxX - minX) * 1000) / scale + 2 * EDGE);
  const height = Math.min(ROOM[way][1], ((maxY - minY) * 1000) / scale + 2 * EDGE);
  const picture = drawn({ scene, lengths, shown, year, photo, scale, width, height, label: t('map.view') });
  return h(
    'section',
    { class: 'map-print', dataset: { scale: String(scale) } },
    h('header', null, h('strong', null, name), h('span', null, t('map.print.about', yearText, day))),
    picture,
    h(
      'footer',
      null,
      northArrow(scene.north ?? 0, t),
      h('div', { class: 'map-print-scale' }, scaleBar(scale, lengths), h('p', null, scaleWords(scale, lengths, t)), h('p', null, t('map.print.actual'))),
      legend(scene, shown, t),
    ),
  );
}

function scaleWords(scale, lengths, t) {
  return lengths.us
    ? t('map.print.scaleUs', scale.toLocaleString('en-US'), lengths.text((scale / 12) * lengths.size))
    : t('map.print.scale', String(scale), lengths.text(scale / 100));
}

/** The map drawn for paper, three dots to a pixel of the screen. */
function drawn({ scene, lengths, shown, year, photo, scale, width, height, label }) {
  const size = [width / MM_PER_PIXEL, height / MM_PER_PIXEL];
  const frame = h('div', { class: 'map-print-frame' });
  frame.style.width = `${size[0]}px`;
  frame.style.height = `${size[1]}px`;
  document.body.append(frame);
  const canvas = new MapCanvas(frame, { lengths, shown, pixelRatio: 3 });
  try {
    canvas.setConflicts(scene.conflicts);
    canvas.draw(scene);
    canvas.setYear(year);
    canvas.setShown(shown);
    if (photo) {
      canvas.setPhoto(photo);
    }
    const { minX, minY, maxX, maxY } = scene.bounds;
    return canvas.picture({
      size,
      centre: [(minX + maxX) / 2, (minY + maxY) / 2],
      resolution: (scale * MM_PER_PIXEL) / 1000,
      dots: 3,
      onto: h('canvas', { class: 'map-print-picture', role: 'img', 'aria-label': label, style: { width: `${width}mm`, height: `${height}mm` } }),
    });
  } finally {
    canvas.dispose();
    frame.remove();
  }
}

function scaleBar(scale, lengths) {
  const whole = barLength(scale, lengths.size);
  const width = (whole * lengths.size * 1000) / scale;
  const parts = 4;
  const part = width / parts;
  const side = 6;
  const element = svg(
    'svg',
    { class: 'map-print-bar', viewBox: `${-side} 0 ${width + 2 * side} 8`, role: 'img', 'aria-label': lengths.text(whole * lengths.size) },
    Array.from({ length: parts }, (_, i) =>
      svg('rect', { class: i % 2 === 0 ? 'ink' : 'paper', x: i * part, y: 4.5, width: part, height: 2.5 }),
    ),
    svg('text', { x: 0, y: 3.4, 'text-anchor': 'middle' }, '0'),
    svg('text', { x: width, y: 3.4, 'text-anchor': 'middle' }, lengths.text(whole * lengths.size)),
  );
  element.style.width = `${width + 2 * side}mm`;
  element.style.height = '8mm';
  element.dataset.metres = String(whole * lengths.size);
  return element;
}

function northArrow(north, t) {
  const arrow = icon('north');
  arrow.style.transform = `rotate(${-north}deg)`;
  return h('div', { class: 'map-print-north', role: 'img', 'aria-label': t('map.north', String(Math.round(north))) }, arrow, h('span', { 'aria-hidden': 'true' }, t('map.northLetter')));
}

function legend(scene, shown, t) {
  const has = (kind) => scene.fixtures.some((one) => one.kind === kind);
  const sign = (name, words) => h('li', null, h('span', { class: `sign ${name}`, 'aria-hidden': 'true' }), words);
  const list = h(
    'ul',
    { class: 'map-print-legend' },
    scene.plants.some((one) => one.role === 'main') ? sign('tree', t('map.sign.tree')) : null,
    scene.plants.some((one) => one.role !== 'main') ? sign('companion', t('map.sign.companion')) : null,
    scene.conflicts.length > 0 ? sign('near', t('map.sign.near')) : null,
    shown.pipes && scene.pipes.some((one) => one.type === 'main') ? sign('main', t('map.sign.main')) : null,
    shown.pipes && scene.pipes.some((one) => one.type === 'lateral') ? sign('lateral', t('map.sign.lateral')) : null,
    shown.trench && scene.trench.length > 0 ? sign('trench', t('map.sign.trench')) : null,
    shown.heights && scene.heights.length > 0 ? sign('height', t('map.sign.height')) : null,
    has('buried-service') ? sign('buried', t('map.kind.buried-service')) : null,
  );
  return has('buried-service') ? add(h('div', null), list, h('p', { class: 'map-print-caution' }, t('map.buried'))) : list;
}
