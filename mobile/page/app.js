// The one screen of Readback. It shows the core's view and sends what the person does; it decides nothing. Whatever is lost
// here (a reload, a dropped socket, a killed tab) is asked for again.
import {T} from '/words.js';
import {$, fill} from './tools.js';
import {commands, P, bus, command, emergency, number, display, type, native, on, draw} from './core.js';
import {site, card, answer, enterWords} from './card.js';
import {caption, bar, hold, alarm, openSheet, closeSheet} from './foot.js';
import {home, replayGo, replayEnd, replayKeys, firstRun} from './home.js';
import {sound} from './sound.js';

const paint = () => {
  const v = P.replay ? P.replay.steps[P.replay.at].view : P.view;
  const was = document.body.dataset.state, now = document.body.dataset.state = v ? v.state : 'home';
  if (P.sheet && now === 'emergency' && was !== now) closeSheet(); // whoever cried it, nothing lies over what to do
  fill($('site'), v && v.site, () => v ? site(v.site) : []);
  if (P.first && !v) fill($('main'), ['first', P.first, P.heard, P.ear.state, P.first === 'hear' && P.ear.good, P.mic, P.trouble, P.prefs.meter, P.prefs.sound], firstRun);
  else if (!v) fill($('main'), ['home', P.loaded, P.jobs, P.appliances, P.appliance, P.trouble, P.deleted, P.hand, P.ear.state, P.ear.why, P.device, P.online], home);
  else if (P.replay) card(v, replayKeys);
  else card(v);
  caption();
  bar();
  alarm(P.view); // a replay is no alarm
  if (P.sheet) $('sheet').hidden = false;
  if (performance.getEntriesByName('act').length && v) { try { performance.measure('step', 'act'); } catch { /* cleared meanwhile */ } performance.clearMarks('act'); }
};

// ---------------------------------------------------------------- keys
addEventListener('keydown', e => {
  if (e.ctrlKey || e.metaKey || e.altKey || e.isComposing) return;
  const field = e.target.matches && e.target.matches('input[type=text]');
  if (e.key === 'Escape') { if (P.sheet) closeSheet(); else if (P.replay) replayEnd(); return; }
  if (field || e.repeat) return;
  const pressed = e.target.matches && e.target.matches('button, summary, a') && (e.key === 'Enter' || e.key === ' ');
  if (pressed) return;
  if (e.key === 'Tab') {
    if (!P.sheet) return;
    const all = [...$('sheet').querySelectorAll('button, input, a')], i = all.indexOf(document.activeElement);
    if (e.shiftKey && i <= 0) { all.at(-1).focus(); e.preventDefault(); } else if (!e.shiftKey && i === all.length - 1) { all[0].focus(); e.preventDefault(); }
    return;
  }
  // Letters can be switched off: who dictates, or leans on the keyboard, says things by chance. Digits, Enter, Escape and ? stay.
  const letter = e.key.length === 1 && !/[\d.,\-? ]/.test(e.key);
  if (letter && P.prefs.noKeys) return;
  if (e.key === 'e' || e.key === 'E') { e.preventDefault(); emergency('any', 'key'); return; }
  if (e.key === '?') { e.preventDefault(); if (P.sheet) closeSheet(); else openSheet(); return; }
  if (P.replay) { if (e.key === 'ArrowRight') replayGo(1); if (e.key === 'ArrowLeft') replayGo(-1); return; }
  const digit = /^(Digit|Numpad)\d$/.test(e.code) ? e.code.at(-1) : '';
  if (!P.view) {
    if (digit >= '1' && digit <= '3') { const b = $('main').querySelectorAll('#begin button, .stack:not(section) button')[digit - 1]; if (b && !b.disabled) b.click(); }
    return;
  }
  const s = P.view.step, numeric = s.keypad && s.keypad.length;
  if (digit && (!numeric || e.shiftKey)) { const a = (s.answers || [])[digit - 1]; if (a) { e.preventDefault(); answer(a, 'key'); } return; }
  if (numeric) {
    const c = digit || (e.key === ',' ? '.' : e.key);
    if (digit || c === '.' || c === '-') { e.preventDefault(); if (!document.querySelector('.keypad')) { P.keys = true; draw(); } type(c); return; }
    if (e.key === 'Backspace' && P.typed) { e.preventDefault(); type('del'); return; }
    if (e.key === 'Enter') { e.preventDefault(); number(s.keypad[P.unit % s.keypad.length], 'key'); return; }
    if (e.key === 'ArrowUp' || e.key === 'ArrowDown') {
      e.preventDefault();
      P.unit = (P.unit + (e.key === 'ArrowDown' ? 1 : s.keypad.length - 1)) % s.keypad.length;
      draw();
      return;
    }
    if (e.key === 'x') { display('over', T('over')); return; }
  }
  if (e.key === 'h') { e.preventDefault(); hold(); return; }
  const c = commands.find(c => c[2] === e.key);
  if (c) { e.preventDefault(); command(c[0], c[1], 'key'); }
});

// ---------------------------------------------------------------- begin
addEventListener('pagehide', () => sound.stop());
on('draw', paint);
on('typed', () => { const o = document.querySelector('.keypad output'); if (o && P.view) o.textContent = enterWords(P.view.step); });
if (native) bus.port(); else bus.socket();
paint();
