// Where no job is open: the job list, the first run, and the replay of a job.
import {$, el, mark} from './tools.js';
import {P, bus, take, post, draw} from './core.js';
import {keyHint} from './card.js';
import {native, mic, sound} from './sound.js';

export const start = async voice => {
  if (voice) await mic.start();
  const s = await post('/api/start', {appliance: P.appliance, voice: !!voice});
  if (s) take(s);
};
const trouble = () => P.trouble && el('p', {class: 'notice', role: 'status'}, P.trouble);
const speechOff = () => P.ear.state === 'off' && el('p', {class: 'notice', role: 'status'}, 'Speech is off: ' + P.ear.why);
export const home = () => [
  el('h1', {class: 'title'}, 'Readback'),
  el('p', {class: 'lead'}, 'No heat? I guide, you look and measure. One thing at a time, safe first.'),
  !P.online && el('p', {class: 'notice', role: 'status'}, 'Not connected to the guide. It comes back by itself.'),
  trouble(), speechOff(), P.device['sound-off'] && el('p', {class: 'notice', role: 'status'}, 'No sound: ' + P.device['sound-off'].text),
  !P.loaded ? null : [P.appliances.length > 1 && el('section', {class: 'plain stack', role: 'group', 'aria-label': 'What gives no heat?'}, el('h2', {}, 'What gives no heat?'), P.appliances.map(a =>
    el('button', {'data-k': 'm' + a.id, 'aria-pressed': a.id === P.appliance ? 'true' : 'false', onclick: () => { P.appliance = a.id; draw(); }}, a.title[0].toUpperCase() + a.title.slice(1)))),
  el('section', {class: 'stack', id: 'begin'},
    el('button', {'data-k': 'voice', class: 'solid', disabled: P.ear.state === 'off', onclick: () => start(true)}, mark('voice'), 'Start by voice', keyHint('1')),
    el('button', {'data-k': 'touch', onclick: () => start(false)}, mark('touch'), 'Start by touch', keyHint('2')))], // not before the core has told: nothing moves under a finger
  P.deleted && el('p', {class: 'undo', role: 'status'}, 'Deleted.', el('button', {'data-k': 'restore', onclick: restore}, 'Bring it back')),
  jobList('Open jobs', P.jobs.filter(j => !j.outcome)), jobList('Finished jobs', P.jobs.filter(j => j.outcome)),
];
const jobList = (title, list) => list.length ? el('section', {class: 'plain'}, el('h2', {}, title), list.map(j => el('article', {class: 'job'},
  el('h3', {}, j.title), el('p', {}, new Date(j.at).toLocaleString([], {dateStyle: 'medium', timeStyle: 'short'}) + (j.outcome ? ' · ' + j.outcome : j.stage ? ' · ' + j.stage : '')),
  j.damage && el('p', {}, j.damage),
  el('div', {class: 'answers'},
    !j.outcome && el('button', {'data-k': 'r' + j.id, onclick: () => resume(j.id)}, 'Go on'),
    el('button', {'data-k': 'p' + j.id, onclick: () => replay(j.id)}, 'Replay'),
    el('a', {class: 'key', 'data-k': 't' + j.id, href: `/api/jobs/${j.id}/transcript`}, 'Record'),
    el('a', {class: 'key', 'data-k': 'z' + j.id, href: `/api/jobs/${j.id}/export.zip`, download: j.id + '.zip', title: 'Record, journal and pictures; no place in the pictures'}, 'Export'),
    el('button', {'data-k': 'd' + j.id, onclick: () => remove(j.id)}, 'Delete'))))) : null;
export const resume = async id => { if (P.prefs.voice) mic.start(); const s = await post(`/api/jobs/${id}/resume`, {}); if (s) take(s); };
const remove = async id => { const s = await post(`/api/jobs/${id}/delete`, {}); if (s) { P.deleted = id; take(s); } };
const restore = async () => { const s = await post(`/api/jobs/${P.deleted}/restore`, {}); if (s) { P.deleted = null; take(s); } };
const replay = async id => {
  const steps = await bus.call('GET', `/api/jobs/${id}/steps`).catch(e => { P.trouble = e.message; draw(); });
  if (!steps) return;
  const list = steps.filter(s => s.view);
  if (list.length) { P.replay = {id, steps: list, at: 0}; draw(); }
};
export const replayGo = n => { const r = P.replay; r.at = Math.max(0, Math.min(r.steps.length - 1, r.at + n)); sound.stop(); draw(); };
export const replayEnd = () => { P.replay = null; $('main').replaceChildren(); draw(); };
export const replayKeys = () => {
  const r = P.replay, ev = r.steps[r.at].event;
  return [ev.photo && el('img', {alt: 'Picture: ' + ev.photo.id, src: `/api/jobs/${r.id}/photo/${ev.photo.name}`, width: 400}),
    ev.said && el('p', {class: 'words2'}, 'Answer: “' + ev.said.text + '”'),
    el('div', {class: 'answers'},
      el('button', {'data-k': 'prev', onclick: () => replayGo(-1)}, 'Before', keyHint('←')), el('button', {'data-k': 'next', onclick: () => replayGo(1)}, 'Next', keyHint('→')),
      el('button', {'data-k': 'hear', onclick: () => post(`/api/jobs/${r.id}/say/${ev.seq}`, {})}, 'Hear it'), el('button', {'data-k': 'end', onclick: replayEnd}, 'End of replay', keyHint('Esc')))];
};
const finishFirst = () => { P.first = null; P.prefs.done = true; post('/api/prefs', P.prefs); draw(); };
export const firstRun = () => P.first === 'choose' ? [
  el('h1', {class: 'title'}, 'Voice or touch?'),
  el('p', {class: 'lead'}, 'By voice both hands stay free for the probes. Nothing you say leaves this device.'), speechOff(),
  el('div', {class: 'stack'},
    el('button', {'data-k': 'fv', class: 'solid', disabled: P.ear.state === 'off', onclick: async () => { P.prefs.voice = true; await mic.start(); P.first = P.mic === 'on' || native ? 'hear' : 'choose'; P.trouble = P.mic === 'denied' ? 'The microphone was refused. Touch does everything.' : ''; draw(); }}, mark('voice'), 'Voice', keyHint('1')),
    el('button', {'data-k': 'ft', onclick: () => { P.prefs.voice = false; finishFirst(); }}, mark('touch'), 'Touch', keyHint('2')),
    el('button', {'data-k': 'fs', onclick: finishFirst}, 'Skip')), trouble()] : [
  el('h1', {class: 'title'}, 'Say: twenty four point five volts'),
  el('p', {class: 'lead'}, 'From where you will work, with the noise that is there.'),
  el('div', {class: 'heard'}, el('h2', {}, P.ear.state === 'ready' ? 'Heard' : 'Hearing is being loaded'), el('p', {class: 'value words'}, P.heard || '\u00a0')),
  el('div', {class: 'stack'}, el('button', {'data-k': 'fg', class: 'solid', onclick: finishFirst}, 'That is right'), el('button', {'data-k': 'fa', onclick: () => { P.heard = ''; draw(); }}, 'Try again'), el('button', {'data-k': 'fk', onclick: finishFirst}, 'Skip'))];
