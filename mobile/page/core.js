// What the page knows and how it talks to the core: the core is the truth, and whatever is lost here is asked for again.
import {T, commandGroups, classes} from '/words.js';
import {unit, tab} from './tools.js';

// ---------------------------------------------------------------- commands: every spoken one has its button and its key
export {commandGroups, classes};
export const commands = commandGroups.flatMap(g => g[1]);

// ---------------------------------------------------------------- state of the page (the rest is the core's)
export const P = {view: null, ear: {state: 'loading'}, jobs: [], prefs: {voice: true, done: true, theme: ''}, online: false, stream: 0, typed: '', unit: 0,
  keys: null, look: '', shell: {}, trouble: '', deleted: null, replay: null, first: null, sheet: null, said: '', appliance: '', appliances: [], mic: 'off', hand: null, heard: '', device: {},
  says: [], reply: '', last: '', lastJob: '', other: false, more: false, closed: ''};

export const listening = () => P.mic === 'on' && P.ear.state === 'ready';

// ---------------------------------------------------------------- news: whoever draws, sounds or looks asks for it here
const ears = {};
export const on = (type, hear) => { (ears[type] ||= []).push(hear); };
const tell = (type, m) => { for (const hear of ears[type] || []) hear(m); };

// ---------------------------------------------------------------- the bus: a loopback socket on a computer, a message port on a phone
export const native = location.protocol === 'https:';
export const bus = {
  next: 1, wait: new Map(), send: null, tries: 0,
  async call(method, path, body) {
    if (!bus.everOpen) await bus.opened; // the page is drawn a moment before the connection stands
    return new Promise((ok, no) => {
      if (!bus.send) return no(new Error(T('not-connected')));
      const id = bus.next++;
      bus.wait.set(id, {ok, no});
      bus.send(JSON.stringify({id, method, path, body}));
    });
  },
  message(text) {
    const m = JSON.parse(text);
    if (m.re !== undefined) {
      const w = bus.wait.get(m.re);
      bus.wait.delete(m.re);
      if (!w) return;
      if (m.status < 300) w.ok(m.body); else w.no(Object.assign(new Error(m.body && m.body.error || T('refused')), {status: m.status}));
      return;
    }
    stream(m);
  },
  open() { bus.tries = 0; bus.everOpen = true; bus.gate(); P.online = true; draw(); refresh(); tell('open'); },
  shut() {
    P.online = false; bus.send = null;
    for (const w of bus.wait.values()) w.no(new Error(T('connection-lost')));
    bus.wait.clear();
    draw();
  },
  socket() {
    const s = new WebSocket((location.protocol === 'https:' ? 'wss://' : 'ws://') + location.host + '/socket');
    s.binaryType = 'arraybuffer';
    s.onopen = () => { bus.send = t => s.send(t); bus.sound = b => s.readyState === 1 && s.bufferedAmount < 1 << 18 && s.send(b); bus.open(); };
    s.onmessage = e => bus.message(e.data);
    s.onclose = () => { bus.shut(); setTimeout(bus.socket, Math.min(2000, 100 * 2 ** bus.tries++)); };
  },
  port() {
    addEventListener('message', e => {
      const port = e.ports && e.ports[0];
      if (!port) return;
      port.onmessage = m => bus.message(m.data);
      bus.send = t => port.postMessage(t);
      bus.open();
    });
  },
};
bus.opened = new Promise(ok => { bus.gate = ok; });
const refresh = async () => {
  const s = await bus.call('GET', '/api/state').catch(() => null);
  if (s) take(s);
};
export const take = s => {
  if (!P.loaded) tell('loaded', s);
  P.loaded = true;
  if (!P.said && s.view) P.said = s.view.said || '';
  if (s.view && P.view && s.view.job !== P.view.job || !s.view) { P.reply = ''; P.says = []; P.trouble = s.trouble || ''; P.photo = null; }
  Object.assign(P, {view: s.view, ear: s.ear, jobs: s.jobs, prefs: s.prefs, stream: s.stream, appliances: s.appliances || []});
  if (!P.appliances.some(a => a.id === P.appliance)) P.appliance = P.appliances.length ? P.appliances[0].id : '';
  P.device = {};
  if (s.trouble) P.trouble = s.trouble;
  for (const d of s.device || []) P.device[d.kind] = d;
  if (!P.prefs.done && !P.first && !P.view) P.first = 'choose';
  theme();
  draw();
  if (!performance.getEntriesByName('interactive').length) performance.mark('interactive');
};
export const theme = () => { if (P.prefs.theme) document.documentElement.dataset.theme = P.prefs.theme; else delete document.documentElement.dataset.theme; };
// shell asks the phone for something of its own: state, mic, torch, save, print, share.
export const shell = (name, body) => bus.call('POST', '/shell/' + name, body || {}).catch(e => { P.trouble = e.message; draw(); return null; });
export const leave = async () => { P.said = ''; const s = await post('/api/leave', {}); if (s) { P.view = null; take(s); } };
export const post = async (path, body) => {
  try { if (P.online) P.trouble = ''; return await bus.call('POST', path, body); }
  catch (e) {
    if (e.status !== 409 && !(P.trouble && !P.online)) P.trouble = e.message; // 409: the job moved on while the finger was on its way
    draw();
    return null;
  }
};

// What the guide said besides the step itself: its reply to the last answer or question. The step is on the card already.
const bare = s => (s || '').toLowerCase().replace(/[^\p{L}\p{N} ]/gu, '').replace(/\s+/g, ' ').trim();
export const replyOf = (says, v, was) => {
  const h = v.heard, fresh = h && !h.pending && /\d/.test(h.taken || '') && JSON.stringify(h) !== JSON.stringify(was && was.heard); // a reading is read back first: it stands beside "Last"
  const s = v.step, last = bare(h && (h.taken || h.text)), act = bare(s.act), warn = bare(s.caution), ask = bare(s.say), power = bare(s.power), moved = !was || was.step.id !== s.id || was.state !== v.state;
  return says.filter((t, i) => {
    const n = bare(t);
    return n && n !== power && n !== last && !(fresh && i === 0) && !(warn && n.includes(warn)) && !(act && n.includes(act)) && !(ask && n.includes(ask)) && !(moved && i === says.length - 1 && v.state !== 'ended');
  }).join(' ');
};

// stream takes one message of the core. Times of tap and drawing are kept for measuring.
const stream = m => {
  if (m.type === 'show') { P.turn = false; if (m.n <= P.stream) return; }
  P.stream = Math.max(P.stream, m.n || 0);
  switch (m.type) {
    case 'show': P.reply = replyOf(P.says, m.view, P.view); P.says = [];
      if (P.view && (P.view.job !== m.view.job || P.view.step.id !== m.view.step.id)) P.photo = null; // a picture is of its step
      P.view = m.view; draw(); break;
    case 'say': P.says.push(m.text); P.said = P.turn ? P.said + ' ' + m.text : m.text; P.turn = true; // what is said after a view begins a new caption
    break;
    case 'ear': P.ear = m.ear; break;
    case 'heard': P.heard = m.text; if (P.first === 'hear') draw(); break;
    case 'device': P.device[m.device.kind] = m.device; draw(); break;
    case 'jobs': refresh(); break;
    case 'trouble': P.trouble = m.text; draw(); break;
    case 'photo': if (!native) setTimeout(() => { P.photo = m.id; draw(); }); break; // a phone opens its own camera; the step that wants it is shown first
  }
  tell(m.type, m);
};

// ---------------------------------------------------------------- answers
let last = {key: '', at: 0};
export const send = (meaning, text, source) => {
  // A bouncing finger or a held key is one answer.
  const key = JSON.stringify(meaning) + (P.view ? P.view.step.id : ''), now = performance.now();
  if (key === last.key && now - last.at < 400) return;
  last = {key, at: now};
  performance.mark('act');
  post('/api/event', {step: P.view ? P.view.step.id : '', event: {at: 0, type: 'said', said: {text, source: source || 'touch', meanings: [{cost: 0, ...meaning}]}}});
};
export const command = (id, text, source) => {
  send({kind: 'command', id}, text, source);
};
export const emergency = (id, source) => {
  if (!P.online) { P.trouble = T('alarm-alone'); draw(); }
  send({kind: 'emergency', id}, classes[id] || T('emergency'), source);
};
const decimal = s => {
  const neg = s.startsWith('-'), t = neg ? s.slice(1) : s, i = t.indexOf('.');
  const digits = t.replace('.', ''), d = {m: Number(digits) * (neg ? -1 : 1) || 0};
  if (i >= 0) d.e = -(t.length - i - 1);
  if (d.e === 0) delete d.e;
  if (neg && !d.m) d.n = true;
  return d;
};
export const number = (u, source) => {
  if (!/\d/.test(P.typed)) { tell('cue', {id: 'refused'}); return; }
  const text = P.typed + ' ' + unit(u);
  if (u === 'x') send({kind: 'count', text: P.typed}, P.typed, source);
  else send({kind: 'reading', reading: {value: {d: decimal(P.typed), u}}}, text, source);
  P.typed = '';
  draw();
};
export const display = (state, text) => send({kind: 'reading', reading: {value: {d: {m: 0}, u: ''}, state}}, text);
export const type = c => {
  if (c === 'del') P.typed = P.typed.slice(0, -1);
  else if (c === '-') P.typed = P.typed.startsWith('-') ? P.typed.slice(1) : '-' + P.typed;
  else if (c === '.') { if (!P.typed.includes('.')) P.typed += P.typed === '' || P.typed === '-' ? '0.' : '.'; }
  else if (P.typed.replace(/\D/g, '').length < 12) P.typed += c;
  tell('typed');
  tab.set('typed', [P.view.step.id, P.typed]);
};

// ---------------------------------------------------------------- when to draw
// While a finger is down nothing is replaced under it: the press would be lost. An emergency does not wait.
let raf = 0, down = 0;
export const draw = () => {
  if (raf) return;
  raf = requestAnimationFrame(() => {
    raf = 0;
    if (down && performance.now() - down < 700 && !(P.view && P.view.state === 'emergency')) setTimeout(draw, 30); else tell('draw');
  });
};
addEventListener('pointerdown', () => { down = performance.now(); }, true);
for (const k of ['pointerup', 'pointercancel']) addEventListener(k, () => { setTimeout(() => { down = 0; }, 0); }, true);
