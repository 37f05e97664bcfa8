// A photo of the place from above, laid under the map. It is kept in this browser alone.
import { h, replace } from '../dom.js';
import { field } from '../forms.js';
import { icon } from '../icons.js';
import { distance, similarity } from './geometry.js';

const DATABASE = 'grovewright-photos';
const STORE = 'photos';

function open() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function inStore(mode, work) {
  const database = await open();
  try {
    return await new Promise((resolve, reject) => {
      const request = work(database.transaction(STORE, mode).objectStore(STORE));
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  } finally {
    database.close();
  }
}

/** Whether this browser keeps a photo for a site. */
export async function hasPhoto(siteId) {
  try {
    return (await inStore('readonly', (store) => store.count(siteId))) > 0;
  } catch {
    return false;
  }
}

/** The photo kept for a site: {image, points, places, opacity}, or undefined. */
export async function keptPhoto(siteId) {
  try {
    const kept = await inStore('readonly', (store) => store.get(siteId));
    return kept ? { ...kept, image: await createImageBitmap(kept.blob) } : undefined;
  } catch {
    return undefined;
  }
}

export function keepPhoto(siteId, { blob, points, places, opacity }) {
  return inStore('readwrite', (store) => store.put({ blob, points, places, opacity }, siteId));
}

export function dropPhoto(siteId) {
  return inStore('readwrite', (store) => store.delete(siteId));
}

/**
 * The form that scales a photo by two points that can be seen on it and whose places are known.
 * Calls `done(photo)` with the photo, or with null to take it away.
 */
export function photoForm({ t, lengths, photo, corners, done, cancel }) {
  let blob = photo?.blob;
  let image = photo?.image;
  const points = photo ? photo.points.map((p) => [...p]) : [null, null];
  let active = 0;
  const canvas = h('canvas', { class: 'photo-picture', role: 'img', 'aria-label': t('map.photo.picture') });
  const problem = h('p', { class: 'error', role: 'alert' });
  const places = photo ? photo.places : [corners[0], corners[Math.min(2, corners.length - 1)]];

  const inputs = [0, 1].map((i) => ({
    px: h('input', { inputmode: 'decimal', value: '' }),
    py: h('input', { inputmode: 'decimal', value: '' }),
    x: h('input', { inputmode: 'decimal', value: lengths.field(places[i][0]) }),
    y: h('input', { inputmode: 'decimal', value: lengths.field(places[i][1]) }),
  }));
  const opacity = h('input', { type: 'range', min: 10, max: 100, step: 5, value: Math.round((photo?.opacity ?? 0.6) * 100) });

  function draw() {
    if (!image) {
      return;
    }
    const scale = Math.min(1, 1000 / Math.max(image.width, image.height));
    canvas.width = Math.round(image.width * scale);
    canvas.height = Math.round(image.height * scale);
    const pen = canvas.getContext('2d');
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    points.forEach((point, i) => {
      if (point) {
        const [x, y] = [point[0] * scale, point[1] * scale];
        for (const [width, colour] of [[6, '#ffffff'], [2.5, i === 0 ? '#98211a' : '#12507d']]) {
          pen.lineWidth = width;
          pen.strokeStyle = colour;
          pen.beginPath();
          pen.arc(x, y, 14, 0, 2 * Math.PI);
          pen.moveTo(x - 22, y);
          pen.lineTo(x + 22, y);
          pen.moveTo(x, y - 22);
          pen.lineTo(x, y + 22);
          pen.stroke();
        }
        inputs[i].px.value = String(Math.round((point[0] / image.width) * 1000) / 10);
        inputs[i].py.value = String(Math.round((point[1] / image.height) * 1000) / 10);
      }
    });
  }

  canvas.addEventListener('click', (event) => {
    const box = canvas.getBoundingClientRect();
    points[active] = [
      ((event.clientX - box.left) / box.width) * image.width,
      ((event.clientY - box.top) / box.height) * image.height,
    ];
    draw();
    setActive(1 - active);
  });

  const chooser = [0, 1].map((i) =>
    h('button', { type: 'button', 'aria-pressed': String(i === 0), onclick: () => setActive(i) }, t('map.photo.click', i + 1)),
  );

  function setActive(i) {
    active = i;
    chooser.forEach((button, j) => button.setAttribute('aria-pressed', String(i === j)));
  }

  async function choose(event) {
    const file = event.target.files[0];
    if (!file) {
      return;
    }
    try {
      image = await createImageBitmap(file);
      blob = file;
      points[0] = [image.width * 0.1, image.height * 0.9];
      points[1] = [image.width * 0.9, image.height * 0.1];
      rest.hidden = false;
      replace(problem);
      draw();
    } catch {
      replace(problem, icon('warning'), h('span', null, t('map.photo.unreadable')));
    }
  }

  function fromFields() {
    inputs.forEach(({ px, py }, i) => {
      const [x, y] = [Number(px.value.replace(',', '.')), Number(py.value.replace(',', '.'))];
      if (Number.isFinite(x) && Number.isFinite(y)) {
        points[i] = [(x / 100) * image.width, (y / 100) * image.height];
      }
    });
    draw();
  }

  function save(event) {
    event.preventDefault();
    fromFields();
    const known = inputs.map(({ x, y }) => [lengths.metres(x.value), lengths.metres(y.value)]);
    const wrong =
      known.flat().some((value) => !Number.isFinite(value))
        ? t('map.photo.places')
        : distance(...known) < 0.5 || distance(...points) < 10
          ? t('map.photo.apart')
          : undefined;
    if (wrong) {
      replace(problem, icon('warning'), h('span', null, wrong));
      return;
    }
    done({ blob, image, points, places: known, opacity: Number(opacity.value) / 100 });
  }

  const rest = h(
    'div',
    { hidden: !image },
    h('p', null, t('map.photo.how')),
    h('div', { class: 'row' }, chooser),
    canvas,
    [0, 1].map((i) =>
      h(
        'fieldset',
        null,
        h('legend', null, t('map.photo.point', i + 1)),
        h(
          'div',
          { class: 'pair' },
          field({ label: t('map.photo.px'), unit: '%', control: inputs[i].px }),
          field({ label: t('map.photo.py'), unit: '%', control: inputs[i].py }),
          field({ label: t('map.field.x'), unit: lengths.unit, control: inputs[i].x }),
          field({ label: t('map.field.y'), unit: lengths.unit, control: inputs[i].y }),
        ),
      ),
    ),
    field({ label: t('map.photo.opacity'), control: opacity }),
  );
  inputs.forEach(({ px, py }) => [px, py].forEach((input) => input.addEventListener('change', fromFields)));

  const form = h(
    'form',
    { onsubmit: save, novalidate: true },
    h('h2', null, t('map.photo.title')),
    h('p', { class: 'help' }, t('map.photo.private')),
    field({
      label: t('map.photo.file'),
      control: h('input', { type: 'file', accept: 'image/*', onchange: choose }),
    }),
    rest,
    problem,
    h(
      'div',
      { class: 'row' },
      h('button', { type: 'submit', class: 'primary' }, t('map.photo.save')),
      photo ? h('button', { type: 'button', class: 'danger', onclick: () => done(null) }, t('map.photo.remove')) : null,
      h('button', { type: 'button', onclick: cancel }, t('map.cancel')),
    ),
  );
  draw();
  return form;
}

/** How a kept photo lies on the ground. */
export function placing(photo) {
  return similarity(photo.points, photo.places);
}
