// The card: the site, the step, what was heard, the answers, the picture, the folds.
import {$, el, mark, unit, clock, shown, fill, written, dial, outcome, tab, keyHint} from './tools.js';
import {commands, classes, P, bus, send, command, emergency, number, display, type, draw, listening, leave, native, shell} from './core.js';
import {eyeBox, eyeKey, eyeHas} from './camera.js';

const siteWords = s => {
  const since = s.since ? ' ' + clock(s.since) : '';
  const power = {on: ['on', 'ON'], off: ['off', 'off, not proved'], proved: ['proved', 'off and proved'], unknown: ['unknown', 'unknown: treat as on']}[s.power] || ['unknown', s.power];
  const gas = {on: ['on'], off: ['off'], unknown: ['not known']}[s.gas];
  const out = [[power[0], 'Power', power[1] + (s.power === 'unknown' ? '' : since), s.power === 'on' || s.power === 'unknown']];
  if (gas) out.push(['gas', 'Gas', gas[0]]);
  if (s.call && s.call !== 'unknown') out.push(['call', 'Call for heat', s.call]);
  const list = (m, label, words) => words && words.length && out.push([m, label, words.join(', '), true]);
  list('cover', 'Open', s.covers);
  list('jumper', 'Jumper in', s.jumpers);
  list('wire', 'Lifted', s.wires);
  if (s.door === 'held') out.push(['door', 'Door switch', 'held in', true]);
  list('reset', 'Reset pressed', s.resets);
  if (s.dial) out.push(['dial', 'Meter', dial(s.dial)]);
  if (s.jack) out.push(['jack', 'Red lead', 'in the current jack', true]);
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
  P.replay && el('p', {class: 'notice'}, `Replay, ${P.replay.at + 1} of ${P.replay.steps.length}`),
  !P.online && el('p', {class: 'notice', role: 'status'}, 'Not connected to the guide. Stay as you are; it comes back by itself.'),
  el('p', {class: 'running'}, el('b', {}, v.stages && v.stages[v.stageNo - 1] || v.stage), el('span', {}, el('i', {}, v.title ? v.title + ' · ' : ''), `part ${v.stageNo} of ${(v.stages || []).length || 16}`)),
];
const signal = {caution: 'Caution', warning: 'Warning', danger: 'Danger', emergency: 'Emergency'};
const caution = (level, words) => el('div', {class: 'caution ' + level}, mark(level, 'shape'), el('b', {}, signal[level] || level), el('p', {}, written(words)));
const step = v => {
  const s = v.step, row = (label, words, cls) => words && [el('dt', {}, label), el('dd', {class: cls}, typeof words === 'string' ? written(words) : words)];
  if (v.state === 'emergency') return [ // what to do comes first; the reason follows
    caution('emergency', s.act), v.call && el('a', {class: 'call', href: 'tel:' + v.call, 'data-k': 'call'}, `From a safe place: call ${v.call}`), s.caution && el('p', {class: 'lead'}, s.caution), el('dl', {class: 'step'}, row('Where', s.where), row('Then', s.say, 'act2'))];
  return [
    s.caution && caution(s.level || 'caution', s.caution), // before all else
    (P.trouble || v.notice) && el('p', {class: 'notice', role: 'status'}, P.trouble || v.notice),
    el('h1', {class: 'unseen'}, written(s.act || s.say || v.ended && outcome(v.ended))),
    el('dl', {class: 'step'},
      row('Where', s.where), row('Meter', s.meter && dial(s.meter), 'meter'),
      row(v.state === 'ended' ? 'End' : s.kind === 'info' ? 'Note' : 'Do', s.act || v.ended && outcome(v.ended), 'act'),
      row('Say', s.say, s.act ? 'say' : 'act'),
      s.until && row('Time', el('span', {class: 'timer', 'data-until': s.until}, ' '))),
    v.ended && v.handover && el('section', {class: 'plain'}, el('h2', {}, 'To read out to the person you call'), el('p', {class: 'lead'}, v.handover)),
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
  const words = `Limit ${h.low != null ? 'from ' + f(h.low) : ''} ${h.high != null ? 'to ' + f(h.high) : ''} ${unit(h.unit)}; reading ${f(h.value)}, uncertain by ${f(u)}`;
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
    el('div', {class: 'row'}, el('h2', {}, h.pending ? 'Heard, not taken yet' : 'Heard and taken'),
      h.verdict && !h.pending && el('p', {class: 'verdict'}, mark(h.verdict), h.verdict[0].toUpperCase() + h.verdict.slice(1))),
    el('div', {class: 'row'}, el('p', {class: 'value' + (words ? ' words' : '') + (h.pending ? ' pending' : '')}, taken),
      !P.replay && el('button', {'data-k': 'not-that', onclick: () => command('scratch-that', 'Not that')}, 'Not that', el('kbd', {}, 'N'))),
    band(h),
    h.limit && !h.pending && el('p', {class: 'limit'}, h.limit),
    h.text && h.text !== taken && el('p', {class: 'words2'}, '“' + h.text + '”', h.rivals && h.rivals.length ? ', or “' + h.rivals.slice(0, 2).join('”, “') + '”' : ''))];
};

// A command has the page's own words, so that it is called the same everywhere.
const label = a => a.kind === 'command' && (commands.find(c => c[0] === a.id) || [])[1] || written(a.text[0].toUpperCase() + a.text.slice(1));
const answers = v => {
  const s = v.step, numeric = s.keypad && s.keypad.length;
  const out = [];
  const list = (s.answers || []).map((a, i) => el('button', {'data-k': 'a' + a.id, onclick: () => answer(a)}, label(a), i < 9 && keyHint((numeric ? '⇧' : '') + (i + 1))));
  if (v.state === 'emergency') {
    const have = new Set((s.answers || []).map(a => a.id));
    for (const [id, text] of Object.entries(classes)) if (!have.has(id) && id !== 'any') list.push(el('button', {'data-k': 'e' + id, onclick: () => emergency(id)}, text));
  }
  const padOpen = P.keys ?? !listening();
  if (numeric) out.push(padOpen ? keypad(s.keypad) : el('div', {class: 'answers'}, el('button', {'data-k': 'keypad', onclick: () => { P.keys = true; draw(); }}, 'Type the number')));
  if (list.length) out.push(el('div', {class: 'answers' + (numeric ? ' gap' : '')}, list));
  if (P.photo && !eyeHas() && v.state !== 'ended') out.push(photo());
  if (v.state === 'ended') out.push(el('div', {class: 'answers'},
    recordKeys(v.job, false), el('button', {'data-k': 'leave', onclick: leave}, 'To the job list')));
  return out.map((o, i) => i ? el('section', {}, o) : o);
};
// What can be done with a job's record. A phone saves, prints and shares through its shell; a browser prints what it shows, to PDF as well.
export const recordKeys = (id, zip) => {
  const html = `/api/jobs/${id}/transcript`, pack = `/api/jobs/${id}/export.zip`, title = 'Record, journal as JSON, pictures without the place they were taken, sound where it was kept';
  return [
    native ? el('button', {'data-k': 'h' + id, onclick: () => shell('save', {path: html})}, 'Save the record') : el('a', {class: 'key', 'data-k': 't' + id, href: html, target: '_blank', rel: 'noopener', title: 'Print it, also to PDF, with the browser'}, 'Read or print'),
    native && el('button', {'data-k': 'f' + id, onclick: () => shell('print', {path: html})}, 'Print or PDF'),
    zip && (native ? el('button', {'data-k': 'z' + id, title, onclick: () => shell('share', {path: pack})}, 'Share as ZIP') : el('a', {class: 'key', 'data-k': 'z' + id, href: pack, download: id + '.zip', title}, 'Save as ZIP'))];
};
export const answer = (a, source) => {
  if (a.kind === 'command') command(a.id, a.text, source);
  else if (a.kind === 'emergency') emergency(a.id, source);
  else send({kind: a.kind || 'choice', id: a.id, text: a.text}, a.text, source);
};
const keypad = list => el('div', {class: 'keypad', role: 'group', 'aria-label': 'Keypad'},
  el('output', {'aria-live': 'polite'}, P.typed),
  [...'123'].map(padKey), padKey('del', '⌫', 'Delete'), [...'456'].map(padKey), padKey('-', '−', 'Minus'), [...'789'].map(padKey), padKey('.', '.', 'Point'),
  padKey('0'), el('button', {'data-k': 'ol', onclick: () => display('over', 'over limit')}, 'OL'), el('button', {'data-k': 'blank', 'aria-label': 'Blank display', onclick: () => display('blank', 'blank')}, '[ ]'),
  el('button', {'data-k': 'jump', 'aria-label': 'Jumping', onclick: () => command('jumping', 'jumping')}, '↕'),
  el('div', {class: 'units'}, list.map((u, i) => el('button', {'data-k': 'u' + u, class: i === P.unit ? 'solid' : '', onclick: () => number(u)}, unit(u)))));
const padKey = (c, label, name) => el('button', {'data-k': 'k' + c, 'aria-label': typeof name === 'string' ? name : null, onclick: () => type(c)}, typeof label === 'string' ? label : c);

export const photo = () => {
  const input = el('input', {type: 'file', accept: 'image/*', capture: 'environment', class: 'unseen', 'aria-label': 'Picture', tabindex: -1, onchange: async e => {
    const f = e.target.files[0];
    if (!f) return;
    const bmp = await createImageBitmap(f, {imageOrientation: 'from-image'}), k = Math.min(1, 1600 / Math.max(bmp.width, bmp.height));
    const c = el('canvas', {width: Math.round(bmp.width * k), height: Math.round(bmp.height * k)});
    c.getContext('2d').drawImage(bmp, 0, 0, c.width, c.height);
    c.toBlob(async b => { const id = P.photo; P.photo = null; await fetch('/photo?id=' + encodeURIComponent(id), {method: 'POST', body: b}); draw(); }, 'image/jpeg', .85);
  }});
  return el('div', {class: 'answers'}, input, el('button', {onclick: () => input.click()}, mark('photo'), 'Take the picture'));
};

// ---------------------------------------------------------------- the circuit
// Three views of one step: the part of the circuit it is about, the whole circuit, and where the part sits.
let drawingKey = '';
export const wholeCircuit = () => look('all');
const look = kind => { P.look = kind; drawingKey = ''; if (P.view) picture(P.view); };
const markWords = {live: ['live', 'has voltage when nothing is wrong'], suspect: ['bar', 'suspected'], good: ['pass', 'passed its check'], lifted: ['fail', 'lifted']};
const lookWords = {near: 'Circuit here', all: 'Whole circuit', place: 'Where it sits'};
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
    box.replaceChildren(el('div', {class: 'scroll', tabindex: kind === 'all' ? 0 : null, role: kind === 'all' ? 'group' : null, 'aria-label': kind === 'all' ? 'Whole circuit' : null}, document.importNode(doc, true)),
      has.length ? el('p', {class: 'legend'}, has.map(k => el('span', {}, mark(markWords[k][0]), markWords[k][1]))) : '',
      el('div', {class: 'looks'}, others.map(k => el('button', {'data-k': 'look-' + k, onclick: () => look(k)}, lookWords[k]))));
    if (P.look === 'all') box.querySelector('[data-lead]')?.scrollIntoView({block: 'center', inline: 'center'});
  }).catch(() => { if (want === drawingKey) box.replaceChildren(); });
};

// ---------------------------------------------------------------- folds
const fold = (k, title, ...body) => el('details', {'data-k': k}, el('summary', {'data-k': 's' + k}, title), el('div', {class: 'fold'}, body));
const why = v => {
  if (!v.why && !(v.suspects || []).length) return [];
  return fold('why', 'Why this step', v.why && [el('p', {}, written(v.why.short)), (v.why.more || []).map(t => el('p', {}, written(t))), v.why.cost && el('p', {}, v.why.cost)],
    (v.suspects || []).map(s => el('div', {class: 'suspect'}, el('div', {}, el('span', {}, s.name), el('b', {}, s.words)),
      el('svg:svg', {viewBox: '0 0 200 12', preserveAspectRatio: 'none', 'aria-hidden': 'true'},
        el('svg:rect', {x: .5, y: 1, width: 199, height: 10, fill: 'none', stroke: 'currentColor'}), el('svg:rect', {x: 0, y: 1, width: 200 * s.p, height: 10, fill: 'currentColor'})))));
};
const openBox = v => [
  (v.open || []).length ? fold('open', `Still to be put back (${v.open.length})`, el('ul', {}, v.open.map(t => el('li', {}, written(t))))) : null,
  (v.facts || []).length ? fold('facts', `Established (${v.facts.length})`, el('ul', {}, v.facts.map(t => el('li', {}, written(t))))) : null,
];
const log = v => (v.log || []).length ? fold('log', `Journal (${v.log.length})`, el('ol', {class: 'log'},
  v.log.map(l => el('li', {}, el('time', {}, clock(l.at)), el('span', {class: l.who}, written(l.text)))))) : [];
