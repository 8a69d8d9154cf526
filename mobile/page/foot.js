// What is never away: caption, listening light, hold on, emergency; and the sheet of all commands.
import {T} from '/words.js';
import {$, el, mark, fill, written, keyHint} from './tools.js';
import {commandGroups, classes, P, theme, post, draw, command, emergency, listening, leave, native, shell, on} from './core.js';
import {openPicture} from './picture.js';
import {mic} from './sound.js';
import {details} from './home.js';

export const caption = () => {
  const v = P.view || P.replay, words = P.replay ? (P.replay.steps[P.replay.at].said || []).join(' ') : P.said;
  fill($('caption'), [!!v, words], () => v ? [el('p', {}, written(words))] : []);
  // One voice: what the guide speaks itself, a screen reader does not say again; where the reader is the voice, it does.
  $('caption').setAttribute('aria-live', listening() && !P.shell.reader ? 'off' : 'polite');
};
const earWords = () => {
  if (P.ear.state === 'off') return ['off', T('ear-off')];
  if (P.ear.state === 'loading') return ['dial', T('ear-loading')];
  if (P.mic === 'denied') return ['fail', T('ear-denied')];
  if (P.mic !== 'on') return ['off', T('ear-mic-off')];
  if (P.ear.busy) return ['voice', T('ear-busy')];
  return ['listening', T('ear-listening'), {quiet: T('too-quiet'), good: T('good'), loud: T('too-loud'), noise: T('noise')}[P.ear.good]];
};
export const bar = () => {
  const b = $('bar');
  if (!b.children.length) b.append(
    el('button', {class: 'emergency', 'data-k': 'emergency', 'aria-keyshortcuts': 'e', onclick: () => emergency('any')}, mark('emergency'), T('emergency')),
    el('button', {id: 'ear', 'data-k': 'ear', onclick: () => mic.toggle()}, el('span', {class: 'top'}, el('span'), el('span', {class: 'level', 'aria-hidden': 'true'}, [1, 2, 3, 4, 5].map(() => el('i')))), el('span'), el('span', {class: 'note'})),
    el('button', {class: 'hold', 'data-k': 'hold', 'aria-keyshortcuts': 'h', onclick: hold}, el('span'), el('span')),
    el('button', {class: 'all', 'data-k': 'all', 'aria-label': T('more') + ': ' + T('all-commands'), 'aria-keyshortcuts': '?', onclick: () => P.sheet ? closeSheet() : openSheet()}, el('span', {'aria-hidden': 'true'}, '⋯'), el('span', {}, T('more'))));
  const cue = P.view && P.cue; // it belongs to the job, not to the list that may follow
  const [shape, words, note] = cue ? [cueMarks[cue] || 'unknown', cueWords[cue] || cue] : earWords();
  const ear = $('ear'), level = P.ear.good ? Math.max(1, Math.min(5, Math.round((P.ear.level + 60) / 11))) : 0;
  ear.className = cue ? 'cue' : '';
  ear.dataset.mic = P.mic;
  ear.dataset.light = P.mic === 'on' && P.ear.state === 'ready' ? 'on' : 'off';
  ear.dataset.busy = !!P.ear.busy;
  fill(ear.children[0].children[0], shape, () => mark(shape));
  if (ear.children[1].textContent !== words) ear.children[1].textContent = words;
  if (ear.children[2].textContent !== (note || '')) ear.children[2].textContent = note || '';
  ear.setAttribute('aria-pressed', P.mic === 'on' ? 'true' : 'false');
  [...ear.children[0].children[1].children].forEach((i, n) => i.className = n < level ? 'on' : '');
  const h = b.querySelector('.hold'), holding = P.view && P.view.state === 'hold';
  h.disabled = !P.view || !!P.view.ended;
  h.setAttribute('aria-pressed', holding ? 'true' : 'false');
  fill(h.children[0], holding, () => mark(holding ? 'on' : 'hold'));
  h.children[1].textContent = holding ? T('go-on') : T('hold-on');
};
export const hold = () => P.view && (P.view.state === 'hold' ? command('ready', T('ready')) : command('hold-on', T('hold-on')));
export const alarm = v => { const t = v && v.state === 'emergency' ? v.step.act : ''; if ($('alarm').textContent !== t) $('alarm').textContent = t; };
setInterval(() => {
  for (const t of document.querySelectorAll('[data-until]')) {
    const left = Math.max(0, Math.round((t.dataset.until - Date.now()) / 1000));
    t.textContent = `${Math.floor(left / 60)}:${String(left % 60).padStart(2, '0')}`;
  }
  for (const t of document.querySelectorAll('[data-since]')) {
    const gone = Math.max(0, Math.round((Date.now() - t.dataset.since) / 1000));
    t.textContent = `${Math.floor(gone / 60)}:${String(gone % 60).padStart(2, '0')}`;
  }
}, 500);
const cueWords = {heard: T('heard'), accepted: T('cue-accepted'), ask: T('cue-ask'), refused: T('cue-refused'), hold: T('cue-hold'), resume: T('cue-resume'), timer: T('time'), danger: T('cue-danger')};
const cueMarks = {heard: 'voice', accepted: 'pass', ask: 'unknown', refused: 'fail', hold: 'hold', resume: 'on', timer: 'dial', danger: 'danger'};
// A cue is shown where the listening light is: one place to look at, and nothing moves.
let cueEnd = 0;
on('cue', ({id}) => {
  P.cue = id;
  bar();
  clearTimeout(cueEnd);
  cueEnd = setTimeout(() => { P.cue = ''; bar(); }, 1200);
});
on('say', caption);
on('ear', () => { bar(); if (P.view) draw(); });

// ---------------------------------------------------------------- sheets
// While a sheet lies over the page, only it and the foot can be reached.
export const openBox = (title, body) => {
  const s = $('sheet'), opener = P.sheet ? s.opener : document.activeElement;
  P.sheet = true;
  s.replaceChildren(el('div', {}, el('div', {class: 'head'}, el('h2', {id: 'sheet-title'}, title), el('button', {'data-k': 'close', onclick: closeSheet}, mark('close'), T('close'), keyHint('Esc'))), body));
  s.hidden = false;
  s.scrollTop = 0;
  s.opener = opener;
  for (const e of [$('main'), $('site')]) e.inert = true;
  s.querySelector('button').focus();
};
export const openSheet = () => openBox(T('all-commands'), sheetBody());
export const closeSheet = () => {
  P.sheet = null;
  $('sheet').hidden = true;
  for (const e of [$('main'), $('site')]) e.inert = false;
  $('sheet').opener?.focus?.();
};
const keyName = k => k === ' ' ? T('space') : k === 'Backspace' ? '⌫' : k && k.toUpperCase();
const sheetBody = () => {
  const words = el('input', {type: 'text', 'data-k': 'words', 'aria-label': T('type-words'), autocomplete: 'off', placeholder: T('type-words')});
  return [
    P.view && el('form', {onsubmit: e => { e.preventDefault(); if (words.value.trim()) post('/api/type', {text: words.value.trim()}); closeSheet(); }}, words, el('button', {'data-k': 'send'}, T('send'))),
    P.view && commandGroups.map(([title, list]) => el('section', {class: 'plain'}, el('h3', {}, title), el('div', {class: 'answers'}, list.map(([id, text, k]) =>
      el('button', {'data-k': 'c' + id, onclick: () => { closeSheet(); command(id, text); }}, text, keyHint(keyName(k))))))),
    el('section', {class: 'plain'}, el('h3', {}, T('emergency'), keyHint('E')), el('div', {class: 'answers'}, Object.entries(classes).map(([id, text]) => el('button', {'data-k': 'x' + id, onclick: () => { closeSheet(); emergency(id); }}, mark('emergency'), text)))),
    el('section', {class: 'plain'}, el('h3', {}, T('this-page')), el('div', {class: 'answers'},
      el('button', {onclick: () => setTheme(P.prefs.theme === 'dark' ? 'light' : 'dark')}, T('theme')),
      P.view && el('button', {'data-k': 'details', onclick: () => details(P.view.job)}, T('details')),
      P.view && el('button', {'data-k': 'circuit', onclick: () => openPicture('all')}, T('wiring-all')),
      el('button', {'data-k': 'shortcuts', 'aria-pressed': P.prefs.noKeys ? 'false' : 'true', onclick: () => { P.prefs.noKeys = !P.prefs.noKeys; post('/api/prefs', P.prefs); openSheet(); }}, mark(P.prefs.noKeys ? 'off' : 'proved'), T('letter-keys')),
      native && el('button', {'data-k': 'torch', disabled: P.view && P.view.state === 'emergency', // a switch may spark where gas is
        'aria-pressed': P.shell.torch ? 'true' : 'false', onclick: () => shell('torch', {on: !P.shell.torch})}, T('torch')),
      P.view && el('button', {'data-k': 'leave', onclick: () => { closeSheet(); leave(); }}, T('to-list')))),
  ];
};
const setTheme = t => { P.prefs.theme = t; theme(); post('/api/prefs', P.prefs); };
