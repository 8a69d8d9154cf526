// Pictures: what the hands do at the open step, large on demand, and the wiring for who wants it.
import {T} from '/words.js';
import {$, el, mark} from './tools.js';
import {P, bus} from './core.js';
import {openBox} from './foot.js';
import {fit} from './card.js';

let key = '';
export const forget = () => { key = ''; };
const fetchSvg = async kind => {
  const text = await bus.call('GET', '/api/drawing?kind=' + kind).catch(() => null);
  if (!text) return null;
  const doc = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  return doc.localName === 'svg' ? document.importNode(doc, true) : null;
};
// A step without a picture has no frame. While the next one comes the last one of the same step stays.
let step = '';
export const picture = v => {
  const box = $('picturebox'), s = v.step;
  const want = JSON.stringify([v.job, s.id, s.points, s.parts, s.place, s.part, v.site.power, v.summary && v.summary.parts, v.state]);
  if (want === key || P.replay) return;
  key = want;
  if (v.state === 'emergency') { box.replaceChildren(); return; }
  if (step !== v.job + s.id) box.replaceChildren();
  step = v.job + s.id;
  fetchSvg('step').then(svg => {
    if (want !== key || !svg) return;
    svg.setAttribute('aria-hidden', 'true');
    box.replaceChildren(el('div', {class: 'picture'}, svg, el('button', {'data-k': 'picture', 'aria-label': T('picture-large', {what: svg.getAttribute('aria-label')}), onclick: () => openPicture('large')})));
    fit(P.view);
  });
};

// A drawing by itself; it comes in when it is there. Each is asked for once.
const sketches = new Map();
const later = (path, box) => {
  if (!sketches.has(path)) sketches.set(path, bus.call('GET', path).catch(() => ''));
  sketches.get(path).then(text => {
    const doc = text && new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
    if (!doc || doc.localName !== 'svg') return;
    doc.setAttribute('aria-hidden', 'true');
    box.replaceChildren(document.importNode(doc, true));
  });
  return box;
};
export const sketchBox = (id, words) => later('/api/sketch?id=' + id, el('span', words ? {class: 'sketch', role: 'img', 'aria-label': words} : {class: 'sketch', 'aria-hidden': 'true'}));
// The picture of a moment of a job that is replayed.
export const momentBox = (id, seq) => later(`/api/jobs/${id}/drawing/${seq}`, el('span', {class: 'sketch moment', 'aria-hidden': 'true'}));

// ---------------------------------------------------------------- the large picture, and the circuit to pan and zoom
const markWords = {live: ['live', T('has-voltage')], suspect: ['bar', T('suspected')], good: ['pass', T('passed')], lifted: ['fail', T('lifted')]};
const kinds = [['large', T('picture')], ['near', T('wiring-here')], ['all', T('wiring-all')]];
let zoom = 1;
export const openPicture = async kind => {
  const svg = await fetchSvg(kind);
  const circuit = kind !== 'large', has = svg ? (svg.getAttribute('data-marks') || '').split(' ').filter(k => markWords[k]) : [];
  const fit = () => { if (svg && circuit) svg.style.width = Math.round(zoom * svg.getAttribute('width')) + 'px'; };
  zoom = 1;
  const room = el('div', {class: 'room ' + kind, tabindex: 0, role: 'group', 'aria-label': kinds.find(k => k[0] === kind)[1]}, svg || el('p', {class: 'lead'}, T('no-picture')));
  const by = (name, words, factor) => el('button', {'data-k': name, 'aria-label': words, onclick: () => { zoom = Math.min(3, Math.max(.4, zoom * factor)); fit(); }}, name === 'zoom-in' ? '+' : '−');
  openBox(T('picture'), [
    el('div', {class: 'answers thirds'}, kinds.filter(k => k[0] !== kind).map(([k, words]) => el('button', {'data-k': 'look-' + k, onclick: () => openPicture(k)}, words)), circuit && svg && [by('zoom-in', T('zoom-in'), 1.25), by('zoom-out', T('zoom-out'), .8)]),
    room, has.length ? el('p', {class: 'legend'}, has.map(k => el('span', {}, mark(markWords[k][0]), markWords[k][1]))) : null]);
  fit();
  room.querySelector('[data-lead]')?.scrollIntoView({block: 'center', inline: 'center'});
  // A finger pans by itself; a mouse drags.
  let from = null;
  room.onpointerdown = e => { if (e.pointerType === 'mouse') from = [e.clientX + room.scrollLeft, e.clientY + room.scrollTop]; };
  room.onpointermove = e => { if (from) { room.scrollLeft = from[0] - e.clientX; room.scrollTop = from[1] - e.clientY; } };
  room.onpointerup = room.onpointerleave = () => { from = null; };
};
