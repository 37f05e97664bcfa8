// Photos of journal entries: made small on the device, which also leaves out where they were taken.
import { h, replace } from '../dom.js';
import { icon } from '../icons.js';
import { t } from '../i18n.js';

const LONGEST_SIDES = [1600, 1200, 800];
const QUALITIES = [0.85, 0.7, 0.5];
const LARGEST = 2 * 1024 * 1024;

/** A JPEG of a picture, at most 1600 pixels long and below 2 MB; fails if it cannot be read. */
export async function shrink(file) {
  const image = await createImageBitmap(file, { imageOrientation: 'from-image' });
  try {
    for (const side of LONGEST_SIDES) {
      const canvas = drawn(image, side);
      for (const quality of QUALITIES) {
        const blob = await new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
        if (blob && blob.size < LARGEST) {
          return blob;
        }
      }
    }
  } finally {
    image.close();
  }
  throw new Error('The picture cannot be made small enough.');
}

function drawn(image, side) {
  const scale = Math.min(1, side / Math.max(image.width, image.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(image.width * scale));
  canvas.height = Math.max(1, Math.round(image.height * scale));
  const pen = canvas.getContext('2d');
  // A JPEG has no transparency; what is clear would become black.
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas;
}

/**
 * A field for one photo, from the camera or from a file. `shown` is the address of the photo there
 * is, if any. The element's `choice()` gives undefined for no change, null for no photo any more, or
 * a promise of the new one, which fails where the file chosen was none.
 */
export function photoField(shown) {
  let choice;
  let url;
  const preview = h('div', { class: 'photo-preview' });
  const error = h('p', { class: 'error', role: 'alert' });

  function draw() {
    const source = choice === undefined ? shown : url;
    replace(
      preview,
      source ? h('img', { src: source, alt: t('journal.photo-chosen') }) : null,
      source ? h('button', { type: 'button', class: 'plain', onclick: () => choose(null) }, icon('remove'), t('journal.photo-none')) : null,
    );
  }

  function choose(blob) {
    forget();
    choice = blob;
    url = blob ? URL.createObjectURL(blob) : undefined;
    draw();
  }

  function forget() {
    if (url) {
      URL.revokeObjectURL(url);
      url = undefined;
    }
  }

  async function take(event) {
    const input = event.target;
    const [file] = input.files;
    if (!file) {
      return;
    }
    replace(error);
    const before = choice;
    const making = shrink(file);
    // Who saves at once gets the photo all the same.
    choice = making;
    try {
      const blob = await making;
      if (choice === making) {
        choose(blob);
      }
    } catch (problem) {
      console.info(problem);
      if (choice === making) {
        choice = before;
        replace(error, icon('warning'), h('span', null, t('journal.photo-unreadable')));
      }
    } finally {
      input.value = '';
    }
  }

  function way(key, attributes) {
    const input = h('input', { type: 'file', accept: 'image/*', hidden: true, 'aria-label': t(key), onchange: take, ...attributes });
    return [input, h('button', { type: 'button', onclick: () => input.click() }, icon('photo'), t(key))];
  }

  const element = h(
    'fieldset',
    { class: 'photo-field' },
    h('legend', null, t('journal.photo')),
    // Only what is held in the hand has a camera worth asking for.
    h('div', { class: 'row' }, matchMedia('(pointer: coarse)').matches ? way('journal.photo-take', { capture: 'environment' }) : null, way('journal.photo-choose')),
    error,
    preview,
  );
  element.choice = () => choice;
  element.forget = forget;
  draw();
  return element;
}
