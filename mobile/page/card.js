// The card: the site, the step, what was heard, the answers, the picture, the folds.
import {T} from '/words.js';
import {$, capital, el, mark, unit, clock, shown, fill, written, dial, outcome, tab, keyHint} from './tools.js';
import {commands, classes, P, bus, send, command, emergency, number, display, type, draw, listening, leave, native, shell} from './core.js';
import {eyeBox, eyeKey, eyeHas} from './camera.js';

const siteWords = s => {
  const since = s.since ? ' ' + clock(s.since) : '';
  const power = {on: ['on', T('power-on')], off: ['off', T('power-off')], proved: ['proved', T('power-proved')], unknown: ['unknown', T('power-unknown')]}[s.power] || ['unknown', s.power];
  const gas = {on: [T('gas-on')], off: [T('gas-off')], unknown: [T('gas-unknown')]}[s.gas];
  const out = [[power[0], T('site-power'), power[1] + (s.power === 'unknown' ? '' : since), s.power === 'on' || s.power === 'unknown']];
  if (gas) out.push(['gas', T('site-gas'), gas[0]]);
  if (s.call && s.call !== 'unknown') out.push(['call', T('site-call'), T('call-' + s.call)]);
  const list = (m, label, words) => words && words.length && out.push([m, label, words.join(', '), true]);
  list('cover', T('site-open'), s.covers);
  list('jumper', T('site-jumper'), s.jumpers);
  list('wire', T('site-lifted'), s.wires);
  if (s.door === 'held') out.push(['door', T('site-door'), T('site-held'), true]);
  list('reset', T('site-reset'), s.resets);
  if (s.dial) out.push(['dial', T('site-meter'), dial(s.dial)]);
  if (s.jack) out.push(['jack', T('site-lead'), T('site-current'), true]);
  return out;
};
export const site = s => el('ul', {}, siteWords(s).map(([m, label, words, alert]) =>
  el('li', {class: alert && 'alert'}, mark(m), el('span', {}, label), el('b', {}, words))));

const section = (name, cls) => {
  let s = $(name);
  if (!s) { s = el('section', {id: name, class: cls}); $('main').append(s); }
  return s;
};
// By voice the picture comes before the buttons, which are hardly used; by touch the buttons are what the thumb wants.
const byVoice = ['head', 'stepbox', 'picturebox', 'heardbox', 'eyebox', 'answerbox', 'whybox', 'openbox', 'logbox'];
const byTouch = ['head', 'stepbox', 'heardbox', 'eyebox', 'answerbox', 'picturebox', 'whybox', 'openbox', 'logbox'];
// card draws a job's view; a replay gives its own keys in place of the answers.
export const card = (v, keys = answers) => {
  const main = $('main');
  if (!$('stepbox')) {
    shown.delete(main);
    main.replaceChildren();
    drawingKey = '';
  }
  const order = listening() && !P.replay ? byVoice : byTouch;
  if (main.dataset.order !== order[2] || !$('stepbox')) {
    main.dataset.order = order[2];
    main.append(...order.map(n => section(n)));
  }
  const was = main.dataset.step, moved = was !== v.step.id + v.state;
  main.dataset.step = v.step.id + v.state;
  if (moved) {
    const kept = was ? null : tab.get('typed'); // digits typed before a reload
    P.typed = kept && kept[0] === v.step.id ? kept[1] : '';
    P.keys = null;
    P.look = '';
  }
  fill($('head'), [v.stageNo, v.stages, v.title, P.online, P.replay && P.replay.at, v.state === 'ended'], () => head(v));
  fill($('stepbox'), [v.step, v.state, v.ended, v.handover, v.notice, P.trouble], () => step(v));
  fill($('heardbox'), [v.heard, v.state], () => heardBox(v.state === 'ended' ? null : v.heard));
  fill($('eyebox'), eyeKey(v), () => eyeBox(v));
  fill($('answerbox'), [v.step, v.state, P.keys, P.mic, P.replay && P.replay.at, v.ended, P.photo, eyeHas()], () => keys(v));
  picture(v);
  fill($('whybox'), [v.why, v.suspects], () => why(v));
  fill($('openbox'), [v.open, v.facts], () => openBox(v));
  fill($('logbox'), [v.log], () => log(v));
  if (moved && !P.replay) { scrollTo({top: 0}); if (main.contains(document.activeElement) || document.activeElement === document.body) main.focus({preventScroll: true}); }
};

const head = v => [
  P.replay && el('p', {class: 'notice'}, T('replay-at', {n: P.replay.at + 1, all: P.replay.steps.length})),
  !P.online && el('p', {class: 'notice', role: 'status'}, T('stay-connected')),
  el('p', {class: 'running'}, el('b', {}, v.stages && v.stages[v.stageNo - 1] || v.stage), el('span', {}, el('i', {}, v.title ? v.title + ' · ' : ''), T('part', {n: v.stageNo, all: (v.stages || []).length || 16}))),
];
const signal = {caution: T('caution'), warning: T('warning'), danger: T('cue-danger'), emergency: T('emergency')};
const caution = (level, words) => el('div', {class: 'caution ' + level}, mark(level, 'shape'), el('b', {}, signal[level] || level), el('p', {}, written(words)));
const step = v => {
  const s = v.step, row = (label, words, cls) => words && [el('dt', {}, label), el('dd', {class: cls}, typeof words === 'string' ? written(words) : words)];
  if (v.state === 'emergency') return [ // what to do comes first; the reason follows
    caution('emergency', s.act), v.call && el('a', {class: 'call', href: 'tel:' + v.call, 'data-k': 'call'}, T('call-number', {number: v.call})), s.caution && el('p', {class: 'lead'}, s.caution), el('dl', {class: 'step'}, row(T('where'), s.where), row(T('then'), s.say, 'act2'))];
  return [
    s.caution && caution(s.level || 'caution', s.caution), // before all else
    (P.trouble || v.notice) && el('p', {class: 'notice', role: 'status'}, P.trouble || v.notice),
    el('h1', {class: 'unseen'}, written(s.act || s.say || v.ended && outcome(v.ended))),
    el('dl', {class: 'step'},
      row(T('where'), s.where), row(T('site-meter'), s.meter && dial(s.meter), 'meter'),
      row(v.state === 'ended' ? T('end') : s.kind === 'info' ? T('note') : T('do'), s.act || v.ended && outcome(v.ended), 'act'),
      row(T('say'), s.say, s.act ? 'say' : 'act'),
      s.until && row(T('time'), el('span', {class: 'timer', 'data-until': s.until}, ' '))),
    v.ended && v.handover && el('section', {class: 'plain'}, el('h2', {}, T('read-out')), el('p', {class: 'lead'}, v.handover)),
  ];
};

// band draws the limit as a bracket, the reading as a point and the meter's uncertainty as a whisker.
const band = h => {
  if (h.pending || h.value == null || h.low == null && h.high == null) return null;
  const u = h.u || 0, lo = h.low ?? Math.min(h.value - u, h.high * (h.high < 0 ? 2 : 0)), hi = h.high ?? Math.max(h.value + u, h.low * 2 || 1);
  const a = Math.min(lo, h.value - u), b = Math.max(hi, h.value + u), pad = (b - a) * .12 || 1;
  const x = t => 10 + (t - a + pad) / (b - a + 2 * pad) * 380, f = t => String(+t.toPrecision(4));
  const line = (x1, y1, x2, y2, w, dash) => el('svg:line', {x1, y1, x2, y2, stroke: 'currentColor', 'stroke-width': w, 'stroke-dasharray': dash});
  const text = (t, at, y, anchor) => el('svg:text', {x: at, y, 'text-anchor': anchor || 'middle', 'font-size': 13, fill: 'currentColor'}, t);
  const words = T('band', {low: h.low != null ? T('band-from', {low: f(h.low)}) : '', high: h.high != null ? T('band-to', {high: f(h.high)}) : '', unit: unit(h.unit), value: f(h.value), u: f(u)});
  return el('svg:svg', {class: 'band', viewBox: '0 0 400 58', role: 'img', 'aria-label': words},
    line(x(lo), 26, x(hi), 26, 8), line(10, 26, 390, 26, 1, '2 4'),
    h.low != null && [line(x(lo), 14, x(lo), 38, 3), text(f(h.low), x(lo), 54)],
    h.high != null && [line(x(hi), 14, x(hi), 38, 3), text(f(h.high), x(hi), 54)],
    line(x(h.value - u), 8, x(h.value + u), 8, 3), line(x(h.value), 2, x(h.value), 40, 3),
    el('svg:circle', {cx: x(h.value), cy: 8, r: 5, fill: 'currentColor'}));
};
const heardBox = h => {
  if (!h) return [];
  const taken = h.taken || h.text, words = !/\d/.test(taken);
  return [el('div', {class: 'heard'},
    el('div', {class: 'row'}, el('h2', {}, h.pending ? T('heard-pending') : T('heard-taken')),
      h.verdict && !h.pending && el('p', {class: 'verdict'}, mark(h.verdict), capital(T('verdict-' + h.verdict.replace(' ', '-'))))),
    el('div', {class: 'row'}, el('p', {class: 'value' + (words ? ' words' : '') + (h.pending ? ' pending' : '')}, taken),
      !P.replay && el('button', {'data-k': 'not-that', onclick: () => command('scratch-that', T('not-that'))}, T('not-that'), el('kbd', {}, 'N'))),
    band(h),
    h.limit && !h.pending && el('p', {class: 'limit'}, h.limit),
    h.text && h.text !== taken && el('p', {class: 'words2'}, '“' + h.text + '”', h.rivals && h.rivals.length ? T('or-rivals', {rivals: '“' + h.rivals.slice(0, 2).join('”, “') + '”'}) : ''))];
};

// A command has the page's own words, so that it is called the same everywhere.
const label = a => a.kind === 'command' && (commands.find(c => c[0] === a.id) || [])[1] || written(capital(a.text));
const answers = v => {
  const s = v.step, numeric = s.keypad && s.keypad.length;
  const out = [];
  const list = (s.answers || []).map((a, i) => el('button', {'data-k': 'a' + a.id, onclick: () => answer(a)}, label(a), i < 9 && keyHint((numeric ? '⇧' : '') + (i + 1))));
  if (v.state === 'emergency') {
    const have = new Set((s.answers || []).map(a => a.id));
    for (const [id, text] of Object.entries(classes)) if (!have.has(id) && id !== 'any') list.push(el('button', {'data-k': 'e' + id, onclick: () => emergency(id)}, text));
  }
  const padOpen = P.keys ?? !listening();
  if (numeric) out.push(padOpen ? keypad(s.keypad) : el('div', {class: 'answers'}, el('button', {'data-k': 'keypad', onclick: () => { P.keys = true; draw(); }}, T('type-number'))));
  if (list.length) out.push(el('div', {class: 'answers' + (numeric ? ' gap' : '')}, list));
  if (P.photo && !eyeHas() && v.state !== 'ended') out.push(photo());
  if (v.state === 'ended') out.push(el('div', {class: 'answers'},
    recordKeys(v.job, false), el('button', {'data-k': 'leave', onclick: leave}, T('to-list'))));
  return out.map((o, i) => i ? el('section', {}, o) : o);
};
// What can be done with a job's record. A phone saves, prints and shares through its shell; a browser prints what it shows, to PDF as well.
export const recordKeys = (id, zip) => {
  const html = `/api/jobs/${id}/transcript`, pack = `/api/jobs/${id}/export.zip`, title = T('record-title');
  return [
    native ? el('button', {'data-k': 'h' + id, onclick: () => shell('save', {path: html})}, T('save-record')) : el('a', {class: 'key', 'data-k': 't' + id, href: html, target: '_blank', rel: 'noopener', title: T('print-title')}, T('read-print')),
    native && el('button', {'data-k': 'f' + id, onclick: () => shell('print', {path: html})}, T('print-pdf')),
    zip && (native ? el('button', {'data-k': 'z' + id, title, onclick: () => shell('share', {path: pack})}, T('share-zip')) : el('a', {class: 'key', 'data-k': 'z' + id, href: pack, download: id + '.zip', title}, T('save-zip')))];
};
export const answer = (a, source) => {
  if (a.kind === 'command') command(a.id, a.text, source);
  else if (a.kind === 'emergency') emergency(a.id, source);
  else send({kind: a.kind || 'choice', id: a.id, text: a.text}, a.text, source);
};
const keypad = list => el('div', {class: 'keypad', role: 'group', 'aria-label': T('keypad')},
  el('output', {'aria-live': 'polite'}, P.typed),
  [...'123'].map(padKey), padKey('del', '⌫', T('delete-digit')), [...'456'].map(padKey), padKey('-', '−', T('minus')), [...'789'].map(padKey), padKey('.', '.', T('point')),
  padKey('0'), el('button', {'data-k': 'ol', onclick: () => display('over', T('over'))}, 'OL'), el('button', {'data-k': T('blank'), 'aria-label': T('blank-display'), onclick: () => display(T('blank'), T('blank'))}, '[ ]'),
  el('button', {'data-k': 'jump', 'aria-label': T('jumping-key'), onclick: () => command(T('jumping'), T('jumping'))}, '↕'),
  el('div', {class: 'units'}, list.map((u, i) => el('button', {'data-k': 'u' + u, class: i === P.unit ? 'solid' : '', onclick: () => number(u)}, unit(u)))));
const padKey = (c, label, name) => el('button', {'data-k': 'k' + c, 'aria-label': typeof name === 'string' ? name : null, onclick: () => type(c)}, typeof label === 'string' ? label : c);

export const photo = () => {
  const input = el('input', {type: 'file', accept: 'image/*', capture: 'environment', class: 'unseen', 'aria-label': T('picture'), tabindex: -1, onchange: async e => {
    const f = e.target.files[0];
    if (!f) return;
    const bmp = await createImageBitmap(f, {imageOrientation: 'from-image'}), k = Math.min(1, 1600 / Math.max(bmp.width, bmp.height));
    const c = el('canvas', {width: Math.round(bmp.width * k), height: Math.round(bmp.height * k)});
    c.getContext('2d').drawImage(bmp, 0, 0, c.width, c.height);
    c.toBlob(async b => { const id = P.photo; P.photo = null; await fetch('/photo?id=' + encodeURIComponent(id), {method: 'POST', body: b}); draw(); }, 'image/jpeg', .85);
  }});
  return el('div', {class: 'answers'}, input, el('button', {onclick: () => input.click()}, mark('photo'), T('take-picture')));
};

// ---------------------------------------------------------------- the circuit
// Three views of one step: the part of the circuit it is about, the whole circuit, and where the part sits.
let drawingKey = '';
export const wholeCircuit = () => look('all');
const look = kind => { P.look = kind; drawingKey = ''; if (P.view) picture(P.view); };
const markWords = {live: ['live', T('has-voltage')], suspect: ['bar', T('suspected')], good: ['pass', T('passed')], lifted: ['fail', T('lifted')]};
const lookWords = {near: T('circuit-here'), all: T('whole-circuit'), place: T('where-it-sits')};
const picture = v => {
  const box = $('picturebox'), s = v.step, circuit = (s.points || []).length || (s.parts || []).length;
  const kind = P.look || (circuit ? 'near' : 'place');
  const want = JSON.stringify([v.job, s.id, s.points, s.parts, s.place, v.site, (v.suspects || []).map(x => [x.part, Math.round(x.p * 10)]), kind]);
  if (want === drawingKey || P.replay) return;
  drawingKey = want;
  if (!P.look && !circuit && !s.place) { box.replaceChildren(); return; }
  bus.call('GET', '/api/drawing?kind=' + kind).then(text => {
    if (want !== drawingKey) return;
    const doc = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
    if (doc.localName !== 'svg') return;
    const has = (doc.getAttribute('data-marks') || '').split(' ').filter(k => markWords[k]);
    const others = ['near', 'place', 'all'].filter(k => k !== kind && (k === 'all' || (k === 'near' ? circuit : s.place)));
    box.className = 'picture ' + kind;
    box.replaceChildren(el('div', {class: 'scroll', tabindex: kind === 'all' ? 0 : null, role: kind === 'all' ? 'group' : null, 'aria-label': kind === 'all' ? T('whole-circuit') : null}, document.importNode(doc, true)),
      has.length ? el('p', {class: 'legend'}, has.map(k => el('span', {}, mark(markWords[k][0]), markWords[k][1]))) : '',
      el('div', {class: 'looks'}, others.map(k => el('button', {'data-k': 'look-' + k, onclick: () => look(k)}, lookWords[k]))));
    if (P.look === 'all') box.querySelector('[data-lead]')?.scrollIntoView({block: 'center', inline: 'center'});
  }).catch(() => { if (want === drawingKey) box.replaceChildren(); });
};

// ---------------------------------------------------------------- folds
const fold = (k, title, ...body) => el('details', {'data-k': k}, el('summary', {'data-k': 's' + k}, title), el('div', {class: 'fold'}, body));
const why = v => {
  if (!v.why && !(v.suspects || []).length) return [];
  return fold('why', T('why-step'), v.why && [el('p', {}, written(v.why.short)), (v.why.more || []).map(t => el('p', {}, written(t))), v.why.cost && el('p', {}, v.why.cost)],
    (v.suspects || []).map(s => el('div', {class: 'suspect'}, el('div', {}, el('span', {}, s.name), el('b', {}, s.words)),
      el('svg:svg', {viewBox: '0 0 200 12', preserveAspectRatio: 'none', 'aria-hidden': 'true'},
        el('svg:rect', {x: .5, y: 1, width: 199, height: 10, fill: 'none', stroke: 'currentColor'}), el('svg:rect', {x: 0, y: 1, width: 200 * s.p, height: 10, fill: 'currentColor'})))));
};
const openBox = v => [
  (v.open || []).length ? fold('open', T('open-count', {n: v.open.length}), el('ul', {}, v.open.map(t => el('li', {}, written(t))))) : null,
  (v.facts || []).length ? fold('facts', T('facts-count', {n: v.facts.length}), el('ul', {}, v.facts.map(t => el('li', {}, written(t))))) : null,
];
const log = v => (v.log || []).length ? fold('log', T('log-count', {n: v.log.length}), el('ol', {class: 'log'},
  v.log.map(l => el('li', {}, el('time', {}, clock(l.at)), el('span', {class: l.who}, written(l.text)))))) : [];
