// Where no job is open: the job list, the first run, and the replay of a job.
import {T} from '/words.js';
import {$, capital, el, mark, outcome, keyHint} from './tools.js';
import {P, bus, take, post, draw} from './core.js';
import {recordKeys} from './card.js';
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
  !P.loaded ? null : [P.appliances.length > 1 && el('section', {class: 'plain stack', role: 'group', 'aria-label': T('which')}, el('h2', {}, T('which')), P.appliances.map(a =>
    el('button', {class: 'pick', 'data-k': 'm' + a.id, 'aria-pressed': a.id === P.appliance ? 'true' : 'false', onclick: () => { P.appliance = a.id; draw(); }}, mark(a.id === P.appliance ? 'proved' : 'off'), capital(a.title)))),
  el('section', {class: 'stack', id: 'begin'},
    el('button', {'data-k': 'voice', class: P.ear.state === 'off' ? '' : 'solid', disabled: P.ear.state === 'off', onclick: () => start(true)}, mark('voice'), T('start-voice'), keyHint('1')),
    el('button', {'data-k': 'touch', class: P.ear.state === 'off' ? 'solid' : '', onclick: () => start(false)}, mark('touch'), T('start-touch'), keyHint('2')))], // not before the core has told: nothing moves under a finger
  P.deleted && el('p', {class: 'undo', role: 'status'}, T('deleted'), el('button', {'data-k': 'restore', onclick: restore}, T('bring-back'))),
  jobList(T('open-jobs'), P.jobs.filter(j => !j.outcome)), jobList(T('finished-jobs'), P.jobs.filter(j => j.outcome)),
  P.jobs.length ? el('p', {class: 'small'}, T('zip-note')) : null,
  P.loaded && el('section', {class: 'stack'}, el('button', {'data-k': 'setup', onclick: () => go('choose')}, mark('dial'), T('setup'))),
];
const jobList = (title, list) => list.length ? el('section', {class: 'plain'}, el('h2', {}, title), list.map(j => el('article', {class: 'job'},
  el('h3', {}, j.title), el('p', {}, new Date(j.at).toLocaleString([], {dateStyle: 'medium', timeStyle: 'short'}) + (j.outcome ? ' · ' + outcome(j.outcome) : j.stage ? ' · ' + j.stage : '')),
  j.damage && el('p', {}, j.damage),
  el('div', {class: 'answers'},
    !j.outcome && el('button', {'data-k': 'r' + j.id, onclick: () => resume(j.id)}, T('go-on')),
    el('button', {'data-k': 'p' + j.id, onclick: () => replay(j.id)}, T('replay')),
    recordKeys(j.id, true),
    j.outcome && el('button', {'data-k': 'o' + j.id, 'aria-expanded': P.hand && P.hand.id === j.id ? 'true' : 'false', onclick: () => handOver(j.id)}, T('hand-over')),
    el('button', {'data-k': 'd' + j.id, onclick: () => remove(j.id)}, T('delete-digit'))),
  P.hand && P.hand.id === j.id && el('div', {role: 'status'}, el('p', {class: 'lead hand'}, P.hand.text), el('button', {'data-k': 'hearhand', onclick: () => post(`/api/jobs/${j.id}/say/handover`, {})}, mark('voice'), T('hear-it')))))) : null;
// The summary for the person who takes over; pressed again, it folds.
const handOver = async id => {
  if (P.hand && P.hand.id === id) { P.hand = null; draw(); return; }
  const h = await bus.call('GET', `/api/jobs/${id}/handover`).catch(e => { P.trouble = e.message; return null; });
  if (h) P.hand = {id, text: h.text};
  draw();
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
export const replayGo = n => { const r = P.replay; r.at = Math.max(0, Math.min(r.steps.length - 1, r.at + n)); sound.stop(); draw(); };
export const replayEnd = () => { P.replay = null; $('main').replaceChildren(); draw(); };
export const replayKeys = () => {
  const r = P.replay, {event: ev, sound: own} = r.steps[r.at];
  return [ev.photo && el('img', {alt: T('picture-of', {id: ev.photo.id}), src: `/api/jobs/${r.id}/photo/${ev.photo.name}`, width: 400}),
    ev.said && el('p', {class: 'words2'}, T('after-answer', {text: ev.said.text})),
    el('div', {class: 'answers'},
      el('button', {'data-k': 'prev', onclick: () => replayGo(-1)}, T('before'), keyHint('←')), el('button', {'data-k': 'next', onclick: () => replayGo(1)}, T('next'), keyHint('→')),
      el('button', {'data-k': 'hear', onclick: () => post(`/api/jobs/${r.id}/say/${ev.seq}`, {})}, T('hear-guide')),
      own && el('button', {'data-k': 'own', onclick: () => sound.play(`/api/jobs/${r.id}/sound/${own}`, 'own', false)}, T('hear-answer')), el('button', {'data-k': 'end', onclick: replayEnd}, T('end-replay'), keyHint('Esc')))];
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
    el('img', {class: 'sketch', src: '/api/sketch?id=meter', alt: T('meter-looks')}),
    el('div', {class: 'answers'}, [['yes', T('meter-yes')], ['no', T('meter-no')]].map(([v, words]) =>
      el('button', {class: 'pick', 'data-k': 'fhas' + v, 'aria-pressed': chosen('has') === v ? 'true' : 'false', onclick: () => setMeter('has', v)}, mark(chosen('has') === v ? 'proved' : 'off'), words))),
    chosen('has') !== 'yes' && el('details', {'data-k': 'need'}, el('summary', {'data-k': 'sneed'}, T('meter-need')), el('div', {class: 'fold'}, el('p', {}, T('meter-need-what')), el('p', {}, T('meter-need-else')))),
    chosen('has') === 'yes' && el('details', {'data-k': 'fine'}, el('summary', {'data-k': 'sfine'}, T('meter-fine')), meterCards.map(([id, ask, list]) => el('section', {class: 'plain', role: 'radiogroup', 'aria-label': ask}, el('h2', {}, ask), el('div', {class: 'answers thirds'}, list.map(([v, words]) =>
      el('button', {class: 'pick', role: 'radio', 'data-k': 'f' + id + v, 'aria-checked': chosen(id) === v ? 'true' : 'false', onclick: () => setMeter(id, v)}, mark(chosen(id) === v ? 'proved' : 'off'), words)))))),
    el('section', {class: 'stack'}, el('button', {'data-k': 'fd', class: 'solid', onclick: finishFirst}, T('done')))],
};
export const firstRun = () => cards[P.first]();
