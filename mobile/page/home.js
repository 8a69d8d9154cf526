// Where no job is open: the job list, the first run, and the replay of a job.
import {T} from '/words.js';
import {$, capital, el, mark, outcome, keyHint, written} from './tools.js';
import {P, bus, take, post, draw, replyOf} from './core.js';
import {recordKeys} from './card.js';
import {sketchBox, momentBox} from './picture.js';
import {openBox, closeSheet} from './foot.js';
import {mic, sound} from './sound.js';

export const start = async voice => {
  if (voice) await mic.start();
  const s = await post('/api/start', {appliance: P.appliance, voice: !!voice});
  if (s) take(s);
};
const trouble = () => P.trouble && el('p', {class: 'notice', role: 'status'}, P.trouble);
const speechOff = () => P.ear.state === 'off' && el('p', {class: 'notice', role: 'status'}, T('speech-off', {why: P.ear.why}));
export const home = () => [
  el('h1', {class: 'title'}, 'Readback'),
  el('p', {class: 'lead'}, T('lead')),
  !P.online && el('p', {class: 'notice', role: 'status'}, T('not-connected')),
  trouble(), speechOff(), P.device['sound-off'] && el('p', {class: 'notice', role: 'status'}, T('sound-off', {why: P.device['sound-off'].text})),
  jobList(T('open-jobs'), P.jobs.filter(j => !j.outcome || j.outcome === 'part-awaited')), // what waits comes before what is new
  !P.loaded ? null : [P.appliances.length > 1 && el('section', {class: 'plain stack'}, el('h2', {id: 'which'}, T('which')), el('div', {class: 'answers looks', role: 'radiogroup', 'aria-labelledby': 'which'}, P.appliances.map(a =>
    el('button', {class: 'pick', role: 'radio', 'data-k': 'm' + a.id, 'aria-checked': a.id === P.appliance ? 'true' : 'false', onclick: () => { P.appliance = a.id; draw(); }}, a.looks && sketchBox(a.looks), el('span', {}, mark(a.id === P.appliance ? 'proved' : 'off'), ' ', capital(a.title))))),
    el('button', {'data-k': 'unsure', onclick: () => openBox(T('look-title'), looks())}, mark('unknown'), T('not-sure'))),
  el('section', {class: 'stack', id: 'begin'},
    el('button', {'data-k': 'voice', class: P.ear.state === 'off' ? '' : 'solid', disabled: P.ear.state === 'off', onclick: () => start(true)}, mark('voice'), T('start-voice'), keyHint('1')),
    el('button', {'data-k': 'touch', class: P.ear.state === 'off' ? 'solid' : '', onclick: () => start(false)}, mark('touch'), T('start-touch'), keyHint('2')))], // not before the core has told: nothing moves under a finger
  P.deleted && el('p', {class: 'undo', role: 'status'}, T('deleted'), el('button', {'data-k': 'restore', onclick: restore}, T('bring-back'))),
  jobList(T('finished-jobs'), P.jobs.filter(j => j.outcome && j.outcome !== 'part-awaited')),
  P.jobs.length ? el('p', {class: 'small'}, T('zip-note')) : null,
  P.loaded && el('section', {class: 'stack'}, el('button', {'data-k': 'setup', onclick: () => go('choose')}, mark('dial'), T('setup'))),
];
// Three looks lead somebody who does not know what it is called.
const looks = () => {
  const by = {cabinet: T('look-cabinet'), heater: T('look-heater')};
  const known = [...new Set(P.appliances.map(a => a.looks).filter(l => by[l]))];
  const pick = l => { const a = P.appliances.find(a => a.looks === l); if (a) P.appliance = a.id; closeSheet(); draw(); };
  return [el('p', {class: 'lead'}, T('look-lead')), el('div', {class: 'stack'}, known.map(l => el('button', {'data-k': 'look' + l, onclick: () => pick(l)}, by[l])),
    el('details', {'data-k': 'nolook'}, el('summary', {}, T('look-none')), el('div', {class: 'fold'}, T('look-none-then'))))];
};
const jobName = j => j.name || j.what || j.title;
const jobList = (title, list) => list.length ? el('section', {class: 'plain'}, el('h2', {}, title), list.map(j => { const name = jobName(j), of = words => ({'aria-label': words + ': ' + name}); return el('article', {class: 'job'},
  el('h3', {}, name), el('p', {}, [name !== j.what && j.what, name !== j.title && j.title].filter(Boolean).join(' · ')),
  el('p', {}, new Date(j.at).toLocaleString([], {dateStyle: 'medium', timeStyle: 'short'}) + (j.outcome ? ' · ' + outcome(j.outcome) : j.stage ? ' · ' + j.stage : '')),
  j.damage && el('p', {}, j.damage),
  el('div', {class: 'answers'},
    (!j.outcome || j.outcome === 'part-awaited') && el('button', {'data-k': 'r' + j.id, class: 'solid', ...of(j.outcome ? T('part-here') : T('go-on')), onclick: () => resume(j.id)}, j.outcome ? T('part-here') : T('go-on')),
    el('button', {'data-k': 'p' + j.id, ...of(T('replay')), onclick: () => replay(j.id)}, T('replay')),
    recordKeys(j.id, true, name),
    j.outcome && el('button', {'data-k': 'o' + j.id, ...of(T('hand-over')), 'aria-expanded': P.hand && P.hand.id === j.id ? 'true' : 'false', onclick: () => handOver(j.id)}, T('hand-over')),
    el('button', {'data-k': 'n' + j.id, ...of(T('details')), onclick: () => details(j.id)}, T('details')),
    el('button', {'data-k': 'd' + j.id, ...of(T('delete-digit')), onclick: () => remove(j.id)}, T('delete-digit'))),
  P.hand && P.hand.id === j.id && el('div', {role: 'status'}, el('p', {class: 'lead hand'}, P.hand.text), el('button', {'data-k': 'hearhand', onclick: () => post(`/api/jobs/${j.id}/say/handover`, {})}, mark('voice'), T('hear-it')))); })) : null;
// What is written by hand of the place and the appliance: at any time, also while the job is open.
export const details = async id => {
  const d = await bus.call('GET', `/api/jobs/${id}/details`).catch(() => ({}));
  const field = (k, words) => { const i = el('input', {type: 'text', 'data-k': 'df' + k, id: 'df' + k, autocomplete: 'off'}); i.value = d[k] || ''; i.oninput = () => { d[k] = i.value; }; return el('p', {class: 'field'}, el('label', {for: 'df' + k}, words), i); };
  openBox(T('details'), el('form', {class: 'details', onsubmit: async e => { e.preventDefault(); if (await post(`/api/jobs/${id}/details`, d)) closeSheet(); }},
    field('name', T('detail-name')), field('address', T('detail-address')), field('model', T('detail-model')), field('serial', T('detail-serial')), field('note', T('detail-note')), el('button', {'data-k': 'keep-details', class: 'solid'}, T('keep'))));
};
// The summary for the person who takes over; pressed again, it folds.
const handOver = async id => {
  if (P.hand && P.hand.id === id) { P.hand = null; draw(); return; }
  const h = await bus.call('GET', `/api/jobs/${id}/handover`).catch(e => { P.trouble = e.message; return null; });
  if (h) P.hand = {id, text: h.text};
  draw();
  requestAnimationFrame(() => requestAnimationFrame(() => document.querySelector('.hand')?.scrollIntoView({block: 'center'})));
};
export const resume = async id => { if (P.prefs.voice) mic.start(); const s = await post(`/api/jobs/${id}/resume`, {}); if (s) take(s); };
const remove = async id => { const s = await post(`/api/jobs/${id}/delete`, {}); if (s) { P.deleted = id; take(s); } };
const restore = async () => { const s = await post(`/api/jobs/${P.deleted}/restore`, {}); if (s) { P.deleted = null; take(s); } };
const replay = async id => {
  const steps = await bus.call('GET', `/api/jobs/${id}/steps`).catch(e => { P.trouble = e.message; draw(); });
  if (!steps) return;
  const list = steps.filter(s => s.view && (s.said || s.event.said || s.event.photo)); // what changes nothing is no step
  if (list.length) { P.replay = {id, steps: list, at: 0}; draw(); }
};
export const replayGo = n => { const r = P.replay; r.at = Math.max(0, Math.min(r.steps.length - 1, r.at + n)); r.doubt = null; P.reply = replyOf(r.steps[r.at].said || [], r.steps[r.at].view, r.at ? r.steps[r.at - 1].view : null); sound.stop(); draw(); };
export const replayEnd = () => { P.replay = null; P.reply = ''; $('main').replaceChildren(); draw(); };
const isReading = s => s.event.said && s.view.heard && !s.view.heard.pending && s.view.heard.verdict;
export const replayKeys = () => {
  const r = P.replay, now = r.steps[r.at], {event: ev, sound: own} = now;
  const judged = isReading(now), readings = r.steps.map((s, i) => [s, i]).filter(([s]) => isReading(s));
  return [ev.photo && el('img', {alt: T('picture-of', {id: ev.photo.id}), src: `/api/jobs/${r.id}/photo/${ev.photo.name}`, width: 400}),
    momentBox(r.id, ev.seq),
    ev.said && el('p', {class: 'words2'}, T('after-answer', {text: ev.said.text})),
    el('div', {class: 'answers'},
      el('button', {'data-k': 'prev', onclick: () => replayGo(-1)}, T('before'), keyHint('←')), el('button', {'data-k': 'next', onclick: () => replayGo(1)}, T('next'), keyHint('→')),
      ev.said && el('button', {'data-k': 'doubt', 'aria-expanded': r.doubt ? 'true' : 'false', onclick: () => doubt(now)}, mark('unknown'), T('doubt')),
      el('button', {'data-k': 'hear', onclick: () => post(`/api/jobs/${r.id}/say/${ev.seq}`, {})}, T('hear-guide')),
      own && el('button', {'data-k': 'own', onclick: () => sound.play(`/api/jobs/${r.id}/sound/${own}`, 'own', false)}, T('hear-answer')), el('button', {'data-k': 'end', onclick: replayEnd}, T('end-replay'), keyHint('Esc'))),
    r.doubt && doubtBox(now, judged),
    readings.length && el('details', {'data-k': 'jumps'}, el('summary', {'data-k': 'sjumps'}, T('jump')), el('div', {class: 'stack'}, readings.map(([s, i]) =>
      el('button', {'data-k': 'jump' + i, onclick: () => replayGo(i - r.at)}, mark(s.view.heard.verdict), `${s.event.seq}: ${s.view.heard.taken} · ${T('verdict-' + s.view.heard.verdict.replace(' ', '-'))}`))))];
};
// A technician's doubt: what the answers say with this one, and without it or with another value; kept as a signed remark beside the record.
const doubt = async (s, value) => {
  const r = P.replay;
  const d = await bus.call('POST', `/api/jobs/${r.id}/doubt`, {seq: s.event.seq, ...(value ? {value} : {})}).catch(e => ({error: e.message}));
  r.doubt = {...d, value: value || ''};
  draw();
};
const opinion = (title, o) => el('div', {}, el('h3', {}, title), el('p', {}, el('b', {}, o.next)), el('ul', {}, (o.suspects || []).map(s => el('li', {}, s.name + ': ' + s.words))));
const doubtBox = (s, judged) => {
  const r = P.replay, d = r.doubt;
  const value = el('input', {type: 'text', 'data-k': 'other-value', 'aria-label': T('other-value'), placeholder: T('other-value'), autocomplete: 'off'});
  const by = el('input', {type: 'text', 'data-k': 'sign-by', 'aria-label': T('sign-by'), placeholder: T('sign-by'), autocomplete: 'name'}), text = el('input', {type: 'text', 'data-k': 'sign-text', 'aria-label': T('sign-text'), placeholder: T('sign-text'), autocomplete: 'off'});
  if (d.saved) return el('p', {class: 'notice', role: 'status'}, T('remark-kept'));
  return el('section', {class: 'doubt', role: 'group', 'aria-label': T('doubt')},
    d.error ? el('p', {class: 'notice', role: 'status'}, d.error) : el('div', {class: 'beside'}, opinion(T('with-it'), d.was), opinion(d.value ? T('with-value', {value: d.value}) : T('without-it'), d.is)),
    judged && el('form', {class: 'free', onsubmit: e => { e.preventDefault(); if (value.value.trim()) doubt(s, value.value.trim()); }}, value, el('button', {'data-k': 'reckon'}, T('reckon'))),
    !d.error && el('form', {class: 'stack', onsubmit: async e => {
      e.preventDefault();
      if (!by.value.trim()) { by.focus(); return; }
      if (await post(`/api/jobs/${r.id}/remarks`, {seq: s.event.seq, by: by.value.trim(), text: text.value.trim(), ...(d.value ? {value: d.value} : {})})) { r.doubt = {saved: true}; draw(); }
    }}, text, by, el('button', {'data-k': 'sign', class: 'solid'}, T('sign'))));
};
// ---------------------------------------------------------------- the first run: three cards, each can be skipped
const keep = () => post('/api/prefs', P.prefs);
const go = card => { P.first = card; P.heard = ''; P.trouble = ''; draw(); };
const finishFirst = () => { P.prefs.done = true; P.first = null; keep(); draw(); };
const chooseVoice = async () => {
  P.prefs.voice = true;
  await mic.start();
  if (P.mic === 'denied') { P.trouble = T('mic-refused'); draw(); } else go('hear');
};
// What the hearing check listens for; the words may come as words or as digits.
const wanted = /twenty.?four point five volts?|24\.5 ?v/i;
const levelWords = {quiet: T('level-quiet'), good: T('level-good'), loud: T('level-loud'), noise: T('level-noise')};
const meterCards = [
  ['rms', T('meter-rms'), [['yes', T('yes')], ['no', T('no')], ['', T('not-sure')]]],
  ['amps', T('meter-amps'), [['uA', 'µA'], ['mA', 'mA'], ['none', T('no-current')], ['', T('not-sure')]]],
  ['cat', T('meter-cat'), [['CAT II', 'CAT II'], ['CAT III', 'CAT III'], ['CAT IV', 'CAT IV'], ['', T('none-found')]]],
];
const chosen = id => (P.prefs.meter || {})[id] || '';
const setMeter = (id, v) => { P.prefs.meter = {...P.prefs.meter, [id]: v}; keep(); draw(); };
const cards = {
  choose: () => [
    el('h1', {class: 'title'}, T('voice-touch')),
    el('p', {class: 'lead'}, T('voice-lead')), speechOff(), trouble(),
    el('div', {class: 'stack'},
      el('button', {'data-k': 'fv', class: P.ear.state === 'off' ? '' : 'solid', disabled: P.ear.state === 'off', onclick: chooseVoice}, mark('voice'), T('voice'), keyHint('1')),
      el('button', {'data-k': 'ft', class: P.ear.state === 'off' ? 'solid' : '', onclick: () => { P.prefs.voice = false; go('meter'); }}, mark('touch'), T('touch'), keyHint('2')),
      el('button', {'data-k': 'fs', onclick: finishFirst}, T('skip'), keyHint('3')))],
  hear: () => [
    el('h1', {class: 'title'}, T('try-say')),
    el('p', {class: 'lead'}, T('try-lead')),
    el('div', {class: 'heard', role: 'status'}, el('h2', {}, P.ear.state === 'ready' ? wanted.test(P.heard) ? T('heard-right') : T('heard') : T('hearing-loads')), el('p', {class: 'value words'}, P.heard || '\u00a0'),
      el('p', {class: 'limit'}, levelWords[P.ear.good] || '\u00a0')),
    el('div', {class: 'stack'},
      el('button', {'data-k': 'fg', class: wanted.test(P.heard) ? 'solid' : '', onclick: () => go('meter')}, wanted.test(P.heard) ? T('go-on') : T('go-on-all-the-same'), keyHint('1')),
      el('button', {'data-k': 'fa', onclick: () => go('hear')}, T('try-again'), keyHint('2')),
      el('button', {'data-k': 'fk', onclick: finishFirst}, T('skip'), keyHint('3'))),
    el('section', {class: 'stack'}, el('button', {class: 'pick', 'data-k': 'fsound', 'aria-pressed': P.prefs.sound ? 'true' : 'false', onclick: () => { P.prefs.sound = !P.prefs.sound; keep(); draw(); }},
      mark(P.prefs.sound ? 'proved' : 'off'), T('keep-sound')), el('p', {class: 'small'}, T('keep-sound-note')))],
  meter: () => [
    el('h1', {class: 'title'}, T('your-meter')),
    el('p', {class: 'lead'}, T('meter-have')),
    sketchBox('meter', T('meter-looks')),
    el('div', {class: 'answers'}, [['yes', T('meter-yes')], ['no', T('meter-no')]].map(([v, words]) =>
      el('button', {class: 'pick', 'data-k': 'fhas' + v, 'aria-pressed': chosen('has') === v ? 'true' : 'false', onclick: () => setMeter('has', v)}, mark(chosen('has') === v ? 'proved' : 'off'), words))),
    chosen('has') !== 'yes' && el('details', {'data-k': 'need'}, el('summary', {'data-k': 'sneed'}, T('meter-need')), el('div', {class: 'fold'}, el('p', {}, T('meter-need-what')), el('p', {}, T('meter-need-else')))),
    chosen('has') === 'yes' && el('details', {'data-k': 'fine'}, el('summary', {'data-k': 'sfine'}, T('meter-fine')), meterCards.map(([id, ask, list]) => el('section', {class: 'plain', role: 'radiogroup', 'aria-label': ask}, el('h2', {}, ask), el('div', {class: 'answers thirds'}, list.map(([v, words]) =>
      el('button', {class: 'pick', role: 'radio', 'data-k': 'f' + id + v, 'aria-checked': chosen(id) === v ? 'true' : 'false', onclick: () => setMeter(id, v)}, mark(chosen(id) === v ? 'proved' : 'off'), words)))))),
    el('section', {class: 'stack'}, el('button', {'data-k': 'fd', class: 'solid', onclick: finishFirst}, T('done')))],
};
export const firstRun = () => cards[P.first]();
