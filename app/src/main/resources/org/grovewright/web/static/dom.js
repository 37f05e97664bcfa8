// Builds elements. Text is always set as text, so nothing an owner typed can become markup.

const SVG = 'http://www.w3.org/2000/svg';

function fill(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes ?? {})) {
    if (value === undefined || value === null || value === false) {
      continue;
    }
    if (name.startsWith('on') && typeof value === 'function') {
      element.addEventListener(name.slice(2), value);
    } else if (name === 'style') {
      Object.assign(element.style, value);
    } else if (name === 'dataset') {
      Object.assign(element.dataset, value);
    } else if (name === 'value' && 'value' in element && element.localName !== 'li') {
      element.value = value;
    } else if (name === 'checked' || name === 'selected' || name === 'indeterminate') {
      element[name] = Boolean(value);
    } else {
      element.setAttribute(name, value === true ? '' : String(value));
    }
  }
  add(element, children);
  return element;
}

/** Adds children: elements, texts, numbers, arrays of these; null, undefined and false add nothing. */
export function add(element, ...children) {
  for (const child of children.flat(Infinity)) {
    if (child !== undefined && child !== null && child !== false) {
      element.append(child instanceof Node ? child : String(child));
    }
  }
  return element;
}

/** An HTML element: h('p', {class: 'hint', onclick: f}, 'text', child). */
export function h(tag, attributes, ...children) {
  const element = document.createElement(tag);
  fill(element, attributes, children);
  // A select can only take its value once it has its options.
  if (tag === 'select' && attributes && attributes.value !== undefined) {
    element.value = attributes.value;
  }
  return element;
}

/** An SVG element. */
export function svg(tag, attributes, ...children) {
  return fill(document.createElementNS(SVG, tag), attributes, children);
}

/** Puts these children in the place of those an element has. */
export function replace(element, ...children) {
  element.replaceChildren();
  return add(element, children);
}

let last = 0;

/** A name for an element that no other has. */
export function uniqueId(prefix = 'e') {
  last += 1;
  return `${prefix}-${last}`;
}
