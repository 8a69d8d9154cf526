// Small tools of the page: elements, marks, units.
import {T, units, outcomes} from '/words.js';

export const $ = id => document.getElementById(id);
const SVG = 'http://www.w3.org/2000/svg';
// el('p', {class: 'a'}, 'text', child): attributes by name, on* as listeners, null children left out.
export const el = (tag, attrs, ...children) => {
  const [name, ns] = tag.startsWith('svg:') ? [tag.slice(4), true] : [tag, false];
  const e = ns ? document.createElementNS(SVG, name) : document.createElement(name);
  for (const [k, v] of Object.entries(attrs || {})) {
    if (v == null || v === false) continue;
    if (k.startsWith('on')) e.addEventListener(k.slice(2), v);
    else e.setAttribute(k, v === true ? '' : v);
  }
  e.append(...children.flat(3).filter(c => c != null && c !== false && c !== ''));
  return e;
};
// The marks are our own: every meaning has a shape, so that colour is never needed.
const marks = {
  caution: 'M12 3 22 21H2zM12 10v5m0 2.5v.5', warning: 'M12 2 22 12 12 22 2 12zM12 7v6m0 2.5v.5',
  danger: 'M8 2h8l6 6v8l-6 6H8l-6-6V8zM12 6v7m0 3v1', emergency: 'M8 2h8l6 6v8l-6 6H8l-6-6V8zM12 6v7m0 3v1',
  on: 'M13 2 5 14h6l-1 8 9-13h-6z!', off: 'M12 4a8 8 0 1 1 0 16a8 8 0 0 1 0-16', proved: 'M12 4a8 8 0 1 1 0 16a8 8 0 0 1 0-16M8 12l3 3 5-6',
  unknown: 'M12 3a9 9 0 1 1 0 18a9 9 0 0 1 0-18M9.5 9.5a2.5 2.5 0 1 1 2.5 3v1.5m0 2.5v.5', gas: 'M12 3c4 5 5 7 5 10a5 5 0 0 1-10 0c0-3 1-5 5-10z',
  cover: 'M4 4h10v16H4zM14 8l6-3v16l-6-3', wire: 'M2 12h6m8 0h6M8 12l4-5M12 7l2-2', jumper: 'M3 18c2-14 16-14 18 0M3 18h.5m17 0h.5', door: 'M6 3h12v18H6zM14 12v1',
  dial: 'M12 4a8 8 0 1 1 0 16a8 8 0 0 1 0-16M12 12l4-5', jack: 'M12 4a8 8 0 1 1 0 16a8 8 0 0 1 0-16M12 9a3 3 0 1 1 0 6a3 3 0 0 1 0-6', call: 'M10 4h4v9a4 4 0 1 1-4 0z', reset: 'M5 12a7 7 0 1 0 3-6M8 2v4h4',
  pass: 'M4 13l5 5L20 6', fail: 'M5 5l14 14M19 5 5 19', 'conditional pass': 'M4 13l5 5 8-9M20 4v1', 'conditional fail': 'M12 4v11m0 4v1', invalid: 'M4 12h16',
  hold: 'M8 4v16M16 4v16', listening: 'M12 4a8 8 0 1 1 0 16a8 8 0 0 1 0-16!', voice: 'M12 3a3 3 0 0 1 3 3v6a3 3 0 0 1-6 0V6a3 3 0 0 1 3-3zM6 11a6 6 0 0 0 12 0M12 17v4', touch: 'M9 21v-6l-3-3 2-1 2 2V5a2 2 0 0 1 4 0v6l5 1-1 9',
  live: 'M2 12h20M2 11h20M2 13h20', bar: 'M3 8h18v8H3zM3 8h11v8H3zM4 12h9',
  back: 'M10 5 3 12l7 7M3 12h18', close: 'M5 5l14 14M19 5 5 19', photo: 'M3 7h5l2-3h4l2 3h5v13H3zM12 10a3.500 3.500 0 1 1 0 7a3.500 3.500 0 0 1 0-7',
};
export const mark = (name, cls) => {
  const d = marks[name] || marks.unknown, fill = d.endsWith('!');
  return el('svg:svg', {viewBox: '0 0 24 24', class: cls || 'mark', 'aria-hidden': 'true'},
    el('svg:path', {d: fill ? d.slice(0, -1) : d, fill: fill ? 'currentColor' : 'none', stroke: 'currentColor', 'stroke-width': 2.4, 'stroke-linejoin': 'round', 'stroke-linecap': 'round'}));
};
export const keyHint = k => el('kbd', {}, k);
export const unit = u => units[u] || u || '';
export const capital = s => s && s.replace(/^./u, c => c.toUpperCase());
// What is spoken in letters is written as people write it.
export const written = t => t && t.replace(/\bA C\b/g, 'AC').replace(/\bD C\b/g, 'DC').replace(/\bO L\b/g, 'OL').replace(/\bC O\b/g, 'CO').replace(/\bR M S\b/g, 'RMS')
  .replace(/\b(MICRO|MILLI|KILO) ?/g, p => p.trim().toLowerCase()).replace(/\bMINUS\b/g, 'minus');
export const dial = t => written(t).replace(new RegExp(T('meter-on')), '').replace(/\.$/, '');
export const outcome = o => outcomes[o] || capital(o.replaceAll('-', ' '));
// tab keeps a little over a reload, where the browser has room for it.
export const tab = {
  get(k) { try { return JSON.parse(sessionStorage.getItem(k)); } catch { return null; } },
  set(k, v) { try { sessionStorage.setItem(k, JSON.stringify(v)); } catch { /* a phone's view has none */ } },
};
export const clock = ms => new Date(ms).toLocaleTimeString([], {hour: '2-digit', minute: '2-digit'});

export const shown = new WeakMap();
// fill draws a section anew only when it says something new; focus and open folds stay.
export const fill = (host, key, make) => {
  const k = JSON.stringify(key);
  if (shown.get(host) === k) return;
  shown.set(host, k);
  const focus = host.contains(document.activeElement) ? document.activeElement.dataset.k : null;
  const open = new Set([...host.querySelectorAll('details[open]')].map(d => d.dataset.k));
  host.replaceChildren(...[make()].flat(3).filter(Boolean));
  for (const d of host.querySelectorAll('details')) if (open.has(d.dataset.k)) d.open = true;
  if (focus) {
    const again = host.querySelector(`[data-k="${CSS.escape(focus)}"]`);
    (again || $('main')).focus({preventScroll: !!again});
  }
};
