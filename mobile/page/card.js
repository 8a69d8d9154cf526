// The card, one question a page: the site, the last answer and what is said to it, caution, picture, sentence, answers; then the folds.
import {T} from '/words.js';
import {$, capital, el, mark, unit, clock, shown, fill, written, dial, outcome, tab, keyHint} from './tools.js';
import {commands, classes, P, bus, post, send, command, emergency, number, display, type, draw, listening, leave, native, shell} from './core.js';
import {eyeBox, eyeKey, eyeHas} from './camera.js';
import {picture, forget} from './picture.js';

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

// The card stands in two columns that a narrow screen shows as one: what is asked, and what it looks like.
const columns = {left: ['head', 'replybox', 'cautionbox', 'stepbox', 'answerbox', 'watchbox', 'lastbox'], right: ['picturebox', 'eyebox', 'whybox', 'openbox', 'logbox']};
const lay = () => {
  const main = $('main');
  shown.delete(main);
  forget();
  main.replaceChildren(...Object.entries(columns).map(([side, names]) => el('div', {id: side}, names.map(n => el('section', {id: n})))));
};
// card draws a job's view; a replay gives its own keys in place of the answers.
export const card = (v, keys = answers) => {
  const main = $('main');
  if (!$('stepbox')) lay();
  const was = main.dataset.step, moved = was !== v.step.id + v.state;
  main.dataset.step = v.step.id + v.state;
  main.dataset.pad = padOpen(v) ? 'open' : '';
  if (moved) {
    const kept = was ? null : tab.get('typed'); // digits typed before a reload
    P.typed = kept && kept[0] === v.step.id ? kept[1] : '';
    P.keys = null;
    P.unit = 0;
    P.other = P.more = false;
  }
  const whole = !!v.summary && (v.step.id === 'decide' || v.state === 'ended');
  fill($('head'), [v.notice, P.trouble, P.online, P.replay && P.replay.at, P.closed], () => head(v));
  fill($('replybox'), [v.heard, v.state, v.summary && !whole, P.reply, P.more, P.ear.text, v.stageNo, !!P.replay], () => replyBox(v, whole));
  fill($('cautionbox'), [v.step.caution, v.step.level, v.state, whole, v.summary], () => cautionBox(v, whole));
  fill($('stepbox'), [v.step, v.state, v.ended, v.heard && v.heard.pending && v.heard, v.handover, whole], () => step(v, whole));
  fill($('watchbox'), [v.step.watch], () => watchBox(v));
  fill($('eyebox'), eyeKey(v), () => eyeBox(v));
  fill($('answerbox'), [v.step, v.state, P.keys, P.other, P.mic, P.unit, P.replay && [P.replay.at, P.replay.doubt], v.ended, P.photo, eyeHas()], () => keys(v));
  fill($('lastbox'), [v.state, lastAnswer(v), !!P.replay], () => lastBox(v));
  picture(v);
  fill($('whybox'), [v.why, v.suspects], () => why(v));
  fill($('openbox'), [v.open, v.facts], () => openBox(v));
  fill($('logbox'), [v.log], () => log(v));
  fit(v);
  if (moved && !P.replay) { scrollTo({top: 0}); if (main.contains(document.activeElement) || document.activeElement === document.body) main.focus({preventScroll: true}); }
};

// All of a step stands between the site and the foot. Where it does not, the picture gives way first, down to a strip that still shows what
// it is of; then the letters.
const smallest = [76, 76, 64];
export const fit = v => {
  const main = $('main'), over = () => $('answerbox').getBoundingClientRect().bottom + scrollY - $('foot').getBoundingClientRect().top;
  main.classList.remove('tight', 'tiny');
  main.style.removeProperty('--pic');
  if (innerWidth >= 1000 || P.replay || !v || v.state === 'ended' || v.state === 'emergency') return;
  const svg = $('picturebox').querySelector('svg');
  const shrink = stage => {
    const o = over();
    if (o > 0 && svg) main.style.setProperty('--pic', Math.max(smallest[stage], Math.round(svg.getBoundingClientRect().height - o - 1)) + 'px');
    return over() > 0;
  };
  const pad = main.dataset.pad === 'open';
  if (svg && svg.dataset.panels.split(' ').length > 2) { // beside the pad: the thing and the meter
    svg.setAttribute('viewBox', pad ? '116 0 228 150' : '0 0 344 150');
    svg.setAttribute('width', pad ? 228 : 344);
  }
  if (pad) { // the last answer gives way to what is to be done
    for (const name of ['tight', 'tiny']) if ($('stepbox').getBoundingClientRect().bottom > $('answerbox').getBoundingClientRect().top) main.classList.add(name);
    return;
  }
  for (const [stage, name] of [[0, ''], [1, 'tight'], [2, 'tiny']]) {
    if (name) main.classList.add(name);
    main.style.removeProperty('--pic');
    if (!shrink(stage)) break;
  }
};
addEventListener('resize', () => { if (P.view && $('stepbox')) fit(P.view); });

// A notice can be closed; it dies with its cause. What the core says of a device stays in the view, so the page keeps what was closed.
const head = v => {
  const text = P.trouble || v.notice;
  return [
    P.replay && el('p', {class: 'notice'}, T('replay-at', {n: P.replay.at + 1, all: P.replay.steps.length})),
    !P.online && el('p', {class: 'notice', role: 'status'}, T('stay-connected')),
    text && P.closed !== text && el('div', {class: 'notice closable', role: 'status'}, el('p', {}, text),
      el('button', {'data-k': 'close-notice', 'aria-label': T('close'), onclick: () => { P.closed = text; P.trouble = ''; draw(); }}, mark('close')))];
};
const signal = {caution: T('caution'), warning: T('warning'), danger: T('cue-danger'), emergency: T('emergency')};
const caution = (level, words) => el('div', {class: 'caution ' + level}, mark(level, 'shape'), el('p', {}, level !== 'emergency' && el('b', {}, signal[level] || level), ' ', written(words)));
const cautionBox = (v, whole) => {
  const s = v.step;
  if (v.state === 'emergency') return [caution('emergency', s.act)]; // what to do comes first; the reason follows
  if (v.state === 'ended') return el('div', {class: 'verdict'}, el('h1', {}, outcome(v.ended)));
  if (whole && v.summary.title) return el('div', {class: 'verdict'}, el('h1', {}, v.summary.title), v.summary.sure && el('p', {}, v.summary.sure));
  return s.caution && v.state !== 'ended' ? [caution(s.level || 'caution', s.caution)] : [];
};

// What was answered last, how it was judged, and what the guide says to it. The reason is one tap away.
const answering = ['ready', 'done', 'cant-reach', 'dont-know', 'not-sure', 'jumping', 'missed-it', 'skip', 'go-live', 'other-way', 'other-meter'];
const commandName = id => (commands.find(c => c[0] === id) || [])[1];
const lastAnswer = v => {
  const h = v.heard, words = h && (h.taken || h.text);
  if (P.lastJob !== v.job) { P.lastJob = v.job; P.last = ''; }
  if (h && !h.pending && words && (!commandName(words) || answering.includes(words))) P.last = commandName(words) ? commandName(words) : written(capital(words));
  return P.last;
};
const replyBox = (v, whole) => {
  if (v.state === 'emergency' || whole && !P.replay) return [];
  const h = v.heard && !v.heard.pending ? v.heard : null, last = lastAnswer(v), reply = P.reply;
  const deep = h && (h.limit || h.low != null || h.high != null || h.text !== (h.taken || h.text));
  const judged = h && h.verdict;
  return [el('div', {class: 'reply' + (judged || reply ? ' full' : '')},
    el('div', {class: 'told', role: 'status'},
      v.summary && !whole && v.summary.title && el('p', {class: 'found'}, el('b', {}, v.summary.title), ' ', v.summary.sure),
      el('p', {class: 'last'}, last ? [T('last') + ' ', el('b', {class: 'value'}, last), judged && el('span', {class: 'judged'}, mark(h.verdict), T('verdict-' + h.verdict.replace(' ', '-')))] : '\u00a0',
        P.ear.text ? el('i', {class: 'me'}, P.ear.text) : el('span', {class: 'count'}, T('part', {n: v.stageNo, all: (v.stages || []).length || 16}))),
      reply && el('p', {class: 'answer' + (P.more ? '' : ' short')}, written(reply))),
    (deep && judged || reply.length > 90) && el('button', {'data-k': 'more-reply', 'aria-expanded': P.more ? 'true' : 'false', onclick: () => { P.more = !P.more; draw(); }}, P.more ? T('less') : T('why'))),
    P.more && h && el('div', {class: 'deep'}, band(h), h.limit && el('p', {}, h.limit),
      h.text && h.text !== (h.taken || h.text) && el('p', {}, '“' + h.text + '”', h.rivals && h.rivals.length ? T('or-rivals', {rivals: '“' + h.rivals.slice(0, 2).join('”, “') + '”'}) : ''))];
};
// Undo says what it takes back.
const lastBox = v => {
  const last = lastAnswer(v);
  if (!last || P.replay || v.state === 'ended' || v.state === 'emergency') return [];
  return el('button', {class: 'undo-last', 'data-k': 'not-that', onclick: () => command('scratch-that', T('not-that'))}, mark('back'), el('span', {}, T('change-last', {text: last})), keyHint('N'));
};

// The sentence is what to do; for a look it is followed by the question. By touch the buttons say how to answer.
const step = (v, whole) => {
  const s = v.step, h = v.heard;
  if (v.state === 'emergency') return [v.call && el('a', {class: 'call', href: 'tel:' + v.call, 'data-k': 'call'}, T('call-number', {number: v.call})),
    s.caution && el('p', {class: 'lead'}, s.caution), s.where && el('p', {class: 'where'}, s.where), s.say && el('p', {class: 'act2'}, written(s.say))];
  const rows = v.summary && (whole || v.state === 'ended') ? el('dl', {class: 'summary'}, (v.summary.rows || []).map(r => el('div', {}, el('dt', {}, r.label), el('dd', {}, written(r.text))))) : null;
  if (v.state === 'ended') return [s.act && el('p', {class: 'lead'}, written(s.act)), rows,
    v.handover && el('section', {class: 'plain handed'}, el('h2', {}, T('read-out')), el('p', {}, written(v.handover)))];
  if (h && h.pending && v.state === 'confirm' && h.taken) return [el('p', {class: 'value pending'}, h.taken), el('h1', {}, confirms(v) ? T('is-right') : T('once-more')), s.where && el('p', {class: 'where'}, written(s.where))];
  const question = s.kind === 'look' || !s.act || listening() && s.kind !== 'act';
  const act = whole ? s.say : s.act || s.say;
  return [rows,
    el('h1', {class: act && act.length > 95 ? 'long' : act && act.length > 55 ? 'middle' : null}, written(act)),
    question && s.act && s.say && !whole && el('p', {class: 'say'}, written(s.say)),
    s.where && el('p', {class: 'where'}, written(s.where)),
    s.meter && el('p', {class: 'meter'}, mark('dial'), el('span', {}, T('site-meter') + ': ' + dial(s.meter))),
    s.watch && s.watch.since && el('p', {class: 'meter'}, T('time') + ' ', el('span', {class: 'timer', 'data-since': s.watch.since}, ' ')),
    s.until && el('p', {class: 'where'}, T('time') + ' ', el('span', {class: 'timer', 'data-until': s.until}, ' '))];
};

// A start that is watched: its events in the order of time, each confirmed or missed, with a running clock.
const eventMark = {now: 'call', later: 'off', seen: 'pass', odd: 'conditional fail', missed: 'fail', skipped: 'invalid'};
const watchBox = v => {
  const w = v.step.watch;
  if (!w || P.replay || v.state === 'emergency' || v.state === 'ended') return [];
  const due = n => `${Math.floor(n / 60)}:${String(Math.round(n % 60)).padStart(2, '0')}`;
  return [el('ol', {class: 'watch'}, (w.events || []).map(e => el('li', {class: e.state, 'aria-current': e.state === 'now' ? 'step' : null},
      el('p', {}, mark(eventMark[e.state] || 'off'), el('span', {}, written(capital(e.text)), e.taken && e.state !== 'seen' && el('em', {}, ' ' + written(e.taken))),
        el('time', {}, e.at && w.since ? due((e.at - w.since) / 1000) : e.due ? T('due', {time: due(e.due)}) : '')),
      e.state !== 'now' && (e.answers || []).length > 0 && (e.state === 'later') && el('div', {class: 'answers'}, e.answers.slice(0, 2).map(a => el('button', {'data-k': 'w' + a.id, onclick: () => answer(a)}, written(capital(a.text))))))))];
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
// A command has the page's own words, so that it is called the same everywhere.
const counted = a => a.kind !== 'command' && /^\d+$/.test(a.id);
const label = a => a.kind === 'command' && commandName(a.id) || (counted(a) ? a.text.replace(/^\S+/, a.id) : written(capital(a.text)));
const numeric = s => !!(s.keypad && s.keypad.length);
// Whether hands can be kept from a step: nobody fails to reach a question.
const reachable = s => s.kind === 'act' || s.kind === 'measure' || (s.points || []).length || (s.parts || []).length || s.place;
// Whether what was heard is answered by a button: else it is asked for once more.
const confirms = v => (v.step.answers || []).some(a => a.kind !== 'command');
const padOpen = v => numeric(v.step) && !P.replay && v.state !== 'emergency' && v.state !== 'ended' && !(v.state === 'confirm' && confirms(v)) && (P.keys ?? (v.step.part !== 'A' && !listening()));
const freeWords = v => v.state === 'ask' && !numeric(v.step) && v.step.kind === 'ask' && !(v.step.answers || []).some(a => a.kind !== 'command');
const answers = v => {
  const s = v.step, pad = padOpen(v);
  if (v.state === 'ended') return [el('div', {class: 'answers'}, v.ended === 'part-awaited' && el('button', {'data-k': 'go-on', class: 'solid', onclick: () => goOn(v.job)}, T('part-here')),
    recordKeys(v.job, false), el('button', {'data-k': 'leave', onclick: leave}, T('to-list')))];
  const shownAnswers = (s.answers || []).filter(a => (a.id !== 'cant-reach' || reachable(s)) && !(s.id === 'decide' && a.id === 'dont-know'));
  const list = shownAnswers.map((a, i) => el('button', {'data-k': 'a' + a.id, class: a.kind === 'command' && !['ready', 'done'].includes(a.id) ? 'quiet' : null, onclick: () => answer(a)}, label(a), i < 9 && keyHint((numeric(s) ? '⇧' : '') + ((s.answers || []).indexOf(a) + 1))));
  if (v.state === 'emergency') {
    const have = new Set((s.answers || []).map(a => a.id));
    for (const [id, text] of Object.entries(classes)) if (!have.has(id) && id !== 'any') list.push(el('button', {'data-k': 'e' + id, onclick: () => emergency(id)}, text));
  }
  const most = Math.max(0, ...shownAnswers.map(a => label(a).length)), grid = 'answers' + (most <= 12 && list.length > 2 || most <= 22 && list.length > 6 ? ' thirds' : '');
  const out = [];
  if (pad) {
    out.push(keypad(s, list));
  } else {
    const open = numeric(s) && !(v.state === 'confirm' && confirms(v)) && (el('button', {'data-k': 'keypad', class: s.part === 'A' ? 'quiet' : 'solid', onclick: () => { P.keys = true; draw(); }}, T('type-number')));
    if (open && s.part !== 'A') out.push(el('div', {class: 'answers'}, open));
    if (open && s.part === 'A') list.push(open);
    if (freeWords(v)) out.push(textField());
    const counts = shownAnswers.map((a, i) => counted(a) && list[i]).filter(Boolean); // blinks are told by their number, in rows of four
    if (counts.length > 3) out.push(el('div', {class: 'answers fours'}, counts));
    const rest = counts.length > 3 ? list.filter(b => !counts.includes(b)) : list;
    if (rest.length) out.push(el('div', {class: grid}, rest));
  }
  if (P.photo && !eyeHas()) out.push(photo());
  return out;
};
const goOn = async id => { const st = await post(`/api/jobs/${id}/resume`, {}); if (st) { P.view = st.view; draw(); } };
const textField = () => {
  const words = el('input', {type: 'text', 'data-k': 'free', 'aria-label': T('type-words'), autocomplete: 'off', placeholder: T('type-words')});
  return el('form', {class: 'free', onsubmit: e => { e.preventDefault(); if (words.value.trim()) post('/api/type', {text: words.value.trim()}); }}, words, el('button', {'data-k': 'send-free'}, T('send')));
};
// What can be done with a job's record. A phone saves, prints and shares through its shell; a browser prints what it shows, to PDF as well.
export const recordKeys = (id, zip, name) => {
  const of = words => name ? {'aria-label': words + ': ' + name} : {};
  const html = `/api/jobs/${id}/transcript`, pack = `/api/jobs/${id}/export.zip`, title = T('record-title');
  return [
    native ? el('button', {'data-k': 'h' + id, ...of(T('save-record')), onclick: () => shell('save', {path: html})}, T('save-record')) : el('a', {class: 'key', 'data-k': 't' + id, ...of(T('read-print')), href: html, target: '_blank', rel: 'noopener', title: T('print-title')}, T('read-print')),
    native && el('button', {'data-k': 'f' + id, ...of(T('print-pdf')), onclick: () => shell('print', {path: html})}, T('print-pdf')),
    zip && (native ? el('button', {'data-k': 'z' + id, ...of(T('share-zip')), title, onclick: () => shell('share', {path: pack})}, T('share-zip')) : el('a', {class: 'key', 'data-k': 'z' + id, ...of(T('save-zip')), href: pack, download: id + '.zip', title}, T('save-zip')))];
};
export const answer = (a, source) => {
  if (a.kind === 'command') command(a.id, a.text, source);
  else if (a.kind === 'emergency') emergency(a.id, source);
  else send({kind: a.kind || 'choice', id: a.id, text: a.text}, a.text, source);
};
// The pad stands at the foot of the screen. Its last key says what it takes; keys that make no sense for the question are not there.
const ofMeter = /V$|ohm$|A$|^.F$/, ofOhms = /ohm$|^.F$/, signed = /V$|A$|^inH|^Pa$|^deg/; // units of a meter, those that can be above its range, those that can be below zero
export const enterWords = s => T('enter', {what: P.typed ? P.typed + ' ' + unit(s.keypad[P.unit % s.keypad.length]) : '…'});
const keypad = (s, list) => {
  const units = s.keypad, u = units[P.unit % units.length], meter = ofMeter.test(u), minus = signed.test(u) && !/AC/.test(written(s.meter || ''));
  if (P.other) return el('div', {class: 'pad'}, el('div', {class: 'answers'}, list,
    meter && [el('button', {'data-k': 'blank', onclick: () => display('blank', T('blank-display'))}, T('blank-display')), el('button', {'data-k': 'jump', onclick: () => command('jumping', T('jumping'))}, T('jumping-key'))],
    el('button', {'data-k': 'digits', onclick: () => { P.other = false; draw(); }}, T('digits'))));
  const over = ofOhms.test(u), more = units.length > 1;
  return el('div', {class: 'pad', role: 'group', 'aria-label': T('keypad')},
    el('div', {class: 'keypad'},
      [...'123'].map(padKey), padKey('del', '⌫', T('delete-digit')), [...'456'].map(padKey), padKey('.', '.', T('point')), [...'789'].map(padKey), padKey('0'),
      el('button', {'data-k': 'other', class: 'word', onclick: () => { P.other = true; draw(); }}, T('no-number')),
      over ? el('button', {'data-k': 'ol', onclick: () => display('over', T('over'))}, 'OL') : minus ? padKey('-', '−', T('minus')) : null,
      more && el('button', {'data-k': 'unit', class: 'word', 'aria-label': T('unit-now', {unit: unit(u)}), onclick: () => { P.unit = (P.unit + 1) % units.length; draw(); }}, unit(u), ' ▾'),
      el('button', {'data-k': 'enter', 'data-unit': u, class: 'solid enter span' + (4 - 1 - (over || minus ? 1 : 0) - (more ? 1 : 0)), onclick: () => number(u)}, el('output', {'aria-live': 'polite'}, enterWords(s)))));
};
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
