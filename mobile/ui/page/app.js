// The one screen of Readback. It shows the core's view and sends what the person does; it decides nothing. Whatever is lost
// here (a reload, a dropped socket, a killed tab) is asked for again: the core is the truth.
'use strict';
(() => {
  // ---------------------------------------------------------------- small tools
  const $ = id => document.getElementById(id);
  const SVG = 'http://www.w3.org/2000/svg';
  // el('p', {class: 'a'}, 'text', child): attributes by name, on* as listeners, null children left out.
  const el = (tag, attrs, ...children) => {
    const [name, ns] = tag.startsWith('svg:') ? [tag.slice(4), true] : [tag, false];
    const e = ns ? document.createElementNS(SVG, name) : document.createElement(name);
    for (const [k, v] of Object.entries(attrs || {})) {
      if (v == null || v === false) continue;
      if (k.startsWith('on')) e.addEventListener(k.slice(2), v);
      else e.setAttribute(k, v === true ? '' : v);
    }
    e.append(...children.flat(3).filter(c => c != null && c !== false && c !== ''));
    return e;
  };
  // The marks are our own: every meaning has a shape, so that colour is never needed.
  const marks = {
    caution: 'M12 3 22 21H2zM12 10v5m0 2.5v.5', warning: 'M12 2 22 12 12 22 2 12zM12 7v6m0 2.5v.5',
    danger: 'M8 2h8l6 6v8l-6 6H8l-6-6V8zM12 6v7m0 3v1', emergency: 'M8 2h8l6 6v8l-6 6H8l-6-6V8zM12 6v7m0 3v1',
    on: 'M13 2 5 14h6l-1 8 9-13h-6z!', off: 'M12 4a8 8 0 1 1 0 16a8 8 0 0 1 0-16', proved: 'M12 4a8 8 0 1 1 0 16a8 8 0 0 1 0-16M8 12l3 3 5-6',
    unknown: 'M12 3a9 9 0 1 1 0 18a9 9 0 0 1 0-18M9.5 9.5a2.5 2.5 0 1 1 2.5 3v1.5m0 2.5v.5', gas: 'M12 3c4 5 5 7 5 10a5 5 0 0 1-10 0c0-3 1-5 5-10z',
    cover: 'M4 4h10v16H4zM14 8l6-3v16l-6-3', wire: 'M2 12h6m8 0h6M8 12l4-5M12 7l2-2', jumper: 'M3 18c2-14 16-14 18 0M3 18h.5m17 0h.5', door: 'M6 3h12v18H6zM14 12v1',
    dial: 'M12 4a8 8 0 1 1 0 16a8 8 0 0 1 0-16M12 12l4-5', jack: 'M12 4a8 8 0 1 1 0 16a8 8 0 0 1 0-16M12 9a3 3 0 1 1 0 6a3 3 0 0 1 0-6', call: 'M10 4h4v9a4 4 0 1 1-4 0z', reset: 'M5 12a7 7 0 1 0 3-6M8 2v4h4',
    pass: 'M4 13l5 5L20 6', fail: 'M5 5l14 14M19 5 5 19', 'conditional pass': 'M4 13l5 5 8-9M20 4v1', 'conditional fail': 'M12 4v11m0 4v1', invalid: 'M4 12h16',
    hold: 'M8 4v16M16 4v16', listening: 'M12 4a8 8 0 1 1 0 16a8 8 0 0 1 0-16!', voice: 'M12 3a3 3 0 0 1 3 3v6a3 3 0 0 1-6 0V6a3 3 0 0 1 3-3zM6 11a6 6 0 0 0 12 0M12 17v4', touch: 'M9 21v-6l-3-3 2-1 2 2V5a2 2 0 0 1 4 0v6l5 1-1 9',
    back: 'M10 5 3 12l7 7M3 12h18', close: 'M5 5l14 14M19 5 5 19', photo: 'M3 7h5l2-3h4l2 3h5v13H3zM12 10a3.500 3.500 0 1 1 0 7a3.500 3.500 0 0 1 0-7',
  };
  const mark = (name, cls) => {
    const d = marks[name] || marks.unknown, fill = d.endsWith('!');
    return el('svg:svg', {viewBox: '0 0 24 24', class: cls || 'mark', 'aria-hidden': 'true'},
      el('svg:path', {d: fill ? d.slice(0, -1) : d, fill: fill ? 'currentColor' : 'none', stroke: 'currentColor', 'stroke-width': 2.4, 'stroke-linejoin': 'round', 'stroke-linecap': 'round'}));
  };
  const units = {ohm: 'Ω', kohm: 'kΩ', Mohm: 'MΩ', uA: 'µA', uF: 'µF', inH2O: 'in. of water', degF: '°F', degC: '°C', dF: '°F', dC: '°C', min: 'min', x: 'times', money: 'money', inHg: 'in. Hg'};
  const unit = u => units[u] || u || '';
  const clock = ms => new Date(ms).toLocaleTimeString([], {hour: '2-digit', minute: '2-digit'});

  // ---------------------------------------------------------------- commands: every spoken one has its button and its key
  const commands = [
    ['repeat', 'Say again', 'r'], ['longer', 'The long form', 'l'], ['shorter', 'The short form', 'b'], ['slower', 'Slower', 's'],
    ['where', 'Where is it?', 'w'], ['why', 'Why this?', 'y'], ['how', 'How do I do that?', 'o'], ['what-if', 'What would that mean?', 'f'],
    ['back', 'One step back', 'Backspace'], ['hold-on', 'Hold on', 'h'], ['ready', 'Ready', ' '], ['done', 'Done', 'd'], ['skip', 'Skip this', 'k'],
    ['scratch-that', 'Not that', 'n'], ['cant-reach', 'Can’t reach', 'c'], ['dont-know', 'Don’t know', 'i'], ['not-sure', 'Not sure', 'u'],
    ['it-changed', 'Something changed', 'g'], ['jumping', 'It is jumping', 'j'], ['missed-it', 'Missed it', 'm'], ['how-long', 'How long?', 't'],
    ['where-am-i', 'Where are we?', 'a'], ['should-it-be', 'What should it be?', 'v'], ['suspected', 'What is suspected?', 'p'], ['how-sure', 'How sure?', '%'],
    ['cost', 'What will it cost?', '$'], ['shortcut', 'Can I bypass it?', '!'], ['quiet', 'Be quiet', 'q'], ['person', 'Call somebody', '+'],
    ['finish', 'Finish for today', 'z'], ['help', 'What can I say?', '='], ['false-alarm', 'False alarm', null], ['go-live', 'Go live', null], ['other-way', 'Other way', null],
    ['other-meter', 'Keypad or camera', null],
  ];
  const classes = {gas: 'Gas smell', co: 'CO alarm', fire: 'Fire or smoke', ill: 'Feeling ill', shock: 'Electric shock', spark: 'Spark or bang', water: 'Water', injury: 'Injury', child: 'Child or animal near', any: 'Something else'};

  // ---------------------------------------------------------------- state of the page (the rest is the core's)
  const P = {view: null, ear: {state: 'loading'}, jobs: [], prefs: {voice: true, done: true, theme: ''}, online: false, stream: 0, typed: '', unit: 0,
    keys: null, all: false, trouble: '', deleted: null, replay: null, first: null, sheet: null, said: '', appliance: '', appliances: [], mic: 'off', commands: null, heard: '', device: {}};

  // ---------------------------------------------------------------- the bus: a loopback socket on a computer, a message port on a phone
  const bus = {
    next: 1, wait: new Map(), send: null, tries: 0,
    async call(method, path, body) {
      if (!bus.everOpen) await bus.opened; // the page is drawn a moment before the connection stands
      return new Promise((ok, no) => {
        if (!bus.send) return no(new Error('Not connected to the guide. It comes back by itself.'));
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
        if (m.status < 300) w.ok(m.body); else w.no(Object.assign(new Error(m.body && m.body.error || 'refused'), {status: m.status}));
        return;
      }
      stream(m);
    },
    open() { bus.tries = 0; bus.everOpen = true; bus.gate(); P.online = true; draw(); refresh(); if (P.mic === 'on') mic.resume(); },
    shut() {
      P.online = false; bus.send = null;
      for (const w of bus.wait.values()) w.no(new Error('The connection to the guide was lost. Please do that again.'));
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
  const take = s => {
    P.loaded = true;
    if (!P.said && s.view) P.said = s.view.said || '';
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
  const theme = () => { if (P.prefs.theme) document.documentElement.dataset.theme = P.prefs.theme; else delete document.documentElement.dataset.theme; };
  const post = async (path, body) => {
    try { if (P.online) P.trouble = ''; return await bus.call('POST', path, body); }
    catch (e) {
      if (e.status !== 409 && !(P.trouble && !P.online)) P.trouble = e.message; // 409: the job moved on while the finger was on its way
      draw();
      return null;
    }
  };

  // stream takes one message of the core. Times of tap and drawing are kept for measuring.
  const stream = m => {
    if (m.type === 'show') { P.turn = false; if (m.n <= P.stream) return; }
    P.stream = Math.max(P.stream, m.n || 0);
    switch (m.type) {
      case 'show': P.view = m.view; draw(); return;
      case 'say': P.said = P.turn ? P.said + ' ' + m.text : m.text; P.turn = true; // what is said after a view begins a new caption
      caption(); return;
      case 'hush': sound.stop(); return;
      case 'cue': cue(m.id); return;
      case 'ear': P.ear = m.ear; bar(); caption(); return;
      case 'heard': P.heard = m.text; if (P.first === 'hear') draw(); return;
      case 'device': P.device[m.device.kind] = m.device; draw(); return;
      case 'jobs': refresh(); return;
      case 'trouble': P.trouble = m.text; draw(); return;
      case 'sound': sound.play(m.url, m.id); return;
      case 'photo': P.photo = m.id; draw(); return;
    }
  };

  // ---------------------------------------------------------------- answers
  let last = {key: '', at: 0};
  const send = (meaning, text, source) => {
    // A bouncing finger or a held key is one answer.
    const key = JSON.stringify(meaning) + (P.view ? P.view.step.id : ''), now = performance.now();
    if (key === last.key && now - last.at < 400) return;
    last = {key, at: now};
    performance.mark('act');
    post('/api/event', {step: P.view ? P.view.step.id : '', event: {at: 0, type: 'said', said: {text, source: source || 'touch', meanings: [{cost: 0, ...meaning}]}}});
  };
  const command = (id, text, source) => {
    send({kind: 'command', id}, text, source);
  };
  const emergency = (id, source) => {
    if (!P.online) { P.trouble = 'Not connected. With gas smell, smoke or an alarm: everyone out now, touch no switch, call from outside.'; draw(); }
    send({kind: 'emergency', id}, classes[id] || 'emergency', source);
  };
  const decimal = s => {
    const neg = s.startsWith('-'), t = neg ? s.slice(1) : s, i = t.indexOf('.');
    const digits = t.replace('.', ''), d = {m: Number(digits) * (neg ? -1 : 1) || 0};
    if (i >= 0) d.e = -(t.length - i - 1);
    if (d.e === 0) delete d.e;
    if (neg && !d.m) d.n = true;
    return d;
  };
  const number = (u, source) => {
    if (!/\d/.test(P.typed)) { cue('refused'); return; }
    const text = P.typed + ' ' + unit(u);
    if (u === 'x') send({kind: 'count', text: P.typed}, P.typed, source);
    else send({kind: 'reading', reading: {value: {d: decimal(P.typed), u}}}, text, source);
    P.typed = '';
    draw();
  };
  const display = (state, text) => send({kind: 'reading', reading: {value: {d: {m: 0}, u: ''}, state}}, text);
  const type = c => {
    if (c === 'del') P.typed = P.typed.slice(0, -1);
    else if (c === '-') P.typed = P.typed.startsWith('-') ? P.typed.slice(1) : '-' + P.typed;
    else if (c === '.') { if (!P.typed.includes('.')) P.typed += P.typed === '' || P.typed === '-' ? '0.' : '.'; }
    else if (P.typed.replace(/\D/g, '').length < 12) P.typed += c;
    const o = document.querySelector('.keypad output');
    if (o) o.textContent = P.typed || '\u00a0';
  };

  // ---------------------------------------------------------------- drawing: a section is replaced only when it says something new
  const shown = new WeakMap();
  const fill = (host, key, make) => {
    const k = JSON.stringify(key);
    if (shown.get(host) === k) return;
    shown.set(host, k);
    const focus = host.contains(document.activeElement) ? document.activeElement.dataset.k : null;
    const open = new Set([...host.querySelectorAll('details[open]')].map(d => d.dataset.k));
    host.replaceChildren(...[make()].flat(3).filter(Boolean));
    for (const d of host.querySelectorAll('details')) if (open.has(d.dataset.k)) d.open = true;
    if (focus) {
      const again = host.querySelector(`[data-k="${CSS.escape(focus)}"]`);
      (again || $('main')).focus({preventScroll: !!again});
    }
  };
  // While a finger is down nothing is replaced under it: the press would be lost. An emergency does not wait.
  let raf = 0, down = 0;
  const draw = () => {
    if (raf) return;
    raf = requestAnimationFrame(() => {
      raf = 0;
      if (down && performance.now() - down < 700 && !(P.view && P.view.state === 'emergency')) setTimeout(draw, 30); else paint();
    });
  };
  addEventListener('pointerdown', () => { down = performance.now(); }, true);
  for (const k of ['pointerup', 'pointercancel']) addEventListener(k, () => { setTimeout(() => { down = 0; }, 0); }, true);
  const paint = () => {
    const v = P.replay ? P.replay.steps[P.replay.at].view : P.view;
    document.body.dataset.state = v ? v.state : 'home';
    fill($('site'), v && v.site, () => v ? site(v.site) : []);
    if (P.first && !v) fill($('main'), ['first', P.first, P.heard, P.ear.state, P.mic, P.trouble], firstRun);
    else if (!v) fill($('main'), ['home', P.loaded, P.jobs, P.appliances, P.appliance, P.trouble, P.deleted, P.ear.state, P.ear.why, P.device, P.online], home);
    else card(v);
    caption();
    bar();
    alarm(v);
    if (P.sheet) $('sheet').hidden = false;
    if (performance.getEntriesByName('act').length && v) { try { performance.measure('step', 'act'); } catch { /* cleared meanwhile */ } performance.clearMarks('act'); }
  };

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
    if (s.dial) out.push(['dial', 'Meter', s.dial]);
    if (s.jack) out.push(['jack', 'Red lead', 'in the current jack', true]);
    return out;
  };
  const site = s => el('ul', {}, siteWords(s).map(([m, label, words, alert]) =>
    el('li', {class: alert && 'alert'}, mark(m), el('span', {}, label), el('b', {}, words))));

  const section = (name, cls) => {
    let s = $(name);
    if (!s) { s = el('section', {id: name, class: cls}); $('main').append(s); }
    return s;
  };
  const order = ['head', 'stepbox', 'heardbox', 'answerbox', 'picturebox', 'whybox', 'openbox', 'logbox'];
  const card = v => {
    const main = $('main');
    if (!$('stepbox')) {
      shown.delete(main);
      main.replaceChildren();
      for (const n of order) section(n);
    }
    const moved = main.dataset.step !== v.step.id + v.state;
    main.dataset.step = v.step.id + v.state;
    if (moved) { P.typed = ''; P.keys = null; P.all = false; }
    fill($('head'), [v.stageNo, v.stages, v.title, v.notice, P.trouble, P.online, P.replay && P.replay.at, v.state === 'ended'], () => head(v));
    fill($('stepbox'), [v.step, v.state, v.ended, v.handover], () => step(v));
    fill($('heardbox'), [v.heard, v.state], () => heardBox(v.heard));
    fill($('answerbox'), [v.step, v.state, P.keys, P.mic, !!P.replay, v.ended, P.photo], () => answers(v));
    picture(v);
    fill($('whybox'), [v.why, v.suspects], () => why(v));
    fill($('openbox'), [v.open, v.facts], () => openBox(v));
    fill($('logbox'), [v.log], () => log(v));
    if (moved && !P.replay) { scrollTo({top: 0}); if (main.contains(document.activeElement) || document.activeElement === document.body) main.focus({preventScroll: true}); }
  };

  const head = v => [
    P.replay && el('p', {class: 'notice'}, `Replay, ${P.replay.at + 1} of ${P.replay.steps.length}`),
    !P.online && el('p', {class: 'notice', role: 'status'}, 'Not connected to the guide. Stay as you are; it comes back by itself.'),
    (P.trouble || v.notice) && el('p', {class: 'notice', role: 'status'}, P.trouble || v.notice),
    el('p', {class: 'running'}, el('b', {}, v.stages && v.stages[v.stageNo - 1] || v.stage), el('span', {}, el('i', {}, v.title ? v.title + ' · ' : ''), `part ${v.stageNo} of ${(v.stages || []).length || 16}`)),
  ];
  const signal = {caution: 'Caution', warning: 'Warning', danger: 'Danger', emergency: 'Emergency'};
  const caution = (level, words) => el('div', {class: 'caution ' + level}, mark(level, 'shape'), el('b', {}, signal[level] || level), el('p', {}, words));
  const step = v => {
    const s = v.step, row = (label, words, cls) => words && [el('dt', {}, label), el('dd', {class: cls}, words)];
    if (v.state === 'emergency') return [ // what to do comes first; the reason follows
      caution('emergency', s.act), s.caution && el('p', {class: 'lead'}, s.caution), el('dl', {class: 'step'}, row('Where', s.where), row('Then', s.say, 'act2'))];
    return [
      s.caution && caution(s.level || 'caution', s.caution),
      el('h1', {class: 'unseen'}, s.act || s.say),
      el('dl', {class: 'step'},
        row('Where', s.where), row('Meter', s.meter, 'meter'),
        row(v.state === 'ended' ? 'End' : s.kind === 'info' ? 'Note' : 'Do', s.act, 'act'),
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

  const keyHint = k => el('kbd', {}, k);
  const answers = v => {
    if (P.replay) return replayKeys();
    const s = v.step, numeric = s.keypad && s.keypad.length;
    const out = [];
    const list = (s.answers || []).map((a, i) => el('button', {'data-k': 'a' + a.id, onclick: () => answer(a)}, a.text, i < 9 && keyHint((numeric ? '⇧' : '') + (i + 1))));
    if (v.state === 'emergency') {
      const have = new Set((s.answers || []).map(a => a.id));
      for (const [id, text] of Object.entries(classes)) if (!have.has(id) && id !== 'any') list.push(el('button', {'data-k': 'e' + id, onclick: () => emergency(id)}, text));
    }
    const padOpen = P.keys ?? !(P.mic === 'on' || native && P.ear.state === 'ready');
    if (numeric) out.push(padOpen ? keypad(s.keypad) : el('div', {class: 'answers'}, el('button', {'data-k': 'keypad', onclick: () => { P.keys = true; draw(); }}, 'Type the number')));
    if (list.length) out.push(el('div', {class: 'answers' + (numeric ? ' gap' : '')}, list));
    if (P.photo) out.push(photo());
    if (v.state === 'ended') out.push(el('div', {class: 'answers'},
      el('button', {onclick: () => location.assign(`/api/jobs/${v.job}/transcript`)}, 'Read the record'), el('button', {'data-k': 'leave', onclick: leave}, 'To the job list')));
    return out.map((o, i) => i ? el('section', {}, o) : o);
  };
  const answer = (a, source) => {
    if (a.kind === 'command') command(a.id, a.text, source);
    else if (a.kind === 'emergency') emergency(a.id, source);
    else send({kind: a.kind || 'choice', id: a.id, text: a.text}, a.text, source);
  };
  const keypad = list => el('div', {class: 'keypad', role: 'group', 'aria-label': 'Keypad'},
    el('output', {'aria-live': 'polite'}, P.typed || '\u00a0'),
    [...'123'].map(padKey), padKey('del', '⌫', 'Delete'), [...'456'].map(padKey), padKey('-', '−', 'Minus'), [...'789'].map(padKey), padKey('.', '.', 'Point'),
    padKey('0'), el('button', {'data-k': 'ol', onclick: () => display('over', 'over limit')}, 'OL'), el('button', {'data-k': 'blank', 'aria-label': 'Blank display', onclick: () => display('blank', 'blank')}, '[ ]'),
    el('button', {'data-k': 'jump', 'aria-label': 'Jumping', onclick: () => command('jumping', 'jumping')}, '↕'),
    el('div', {class: 'units'}, list.map((u, i) => el('button', {'data-k': 'u' + u, class: i === P.unit ? 'solid' : '', onclick: () => number(u)}, unit(u)))));
  const padKey = (c, label, name) => el('button', {'data-k': 'k' + c, 'aria-label': typeof name === 'string' ? name : null, onclick: () => type(c)}, typeof label === 'string' ? label : c);

  const photo = () => {
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
  let drawingKey = '';
  const picture = v => {
    const box = $('picturebox'), s = v.step;
    const want = JSON.stringify([v.job, s.points, s.parts, v.site.wires, v.site.power, v.site.call, (v.suspects || []).map(x => [x.part, Math.round(x.p * 10)]), P.all]);
    if (want === drawingKey || P.replay) return;
    drawingKey = want;
    if (!P.all && !(s.points || []).length && !(s.parts || []).length) { box.replaceChildren(); return; }
    bus.call('GET', '/api/drawing' + (P.all ? '?all=1' : '')).then(text => {
      if (want !== drawingKey) return;
      const doc = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
      if (doc.localName !== 'svg') return;
      box.className = 'picture' + (P.all ? ' all' : '');
      box.replaceChildren(el('div', {class: 'scroll', tabindex: P.all ? 0 : null}, document.importNode(doc, true)),
        el('button', {'data-k': 'picture', onclick: () => { P.all = !P.all; picture(P.view); }}, P.all ? 'This part only' : 'Whole circuit'));
    }).catch(() => box.replaceChildren());
  };

  // ---------------------------------------------------------------- folds
  const fold = (k, title, ...body) => el('details', {'data-k': k}, el('summary', {'data-k': 's' + k}, title), el('div', {class: 'fold'}, body));
  const why = v => {
    if (!v.why && !(v.suspects || []).length) return [];
    return fold('why', 'Why this step', v.why && [el('p', {}, v.why.short), (v.why.more || []).map(t => el('p', {}, t)), v.why.cost && el('p', {}, v.why.cost)],
      (v.suspects || []).map(s => el('div', {class: 'suspect'}, el('div', {}, el('span', {}, s.name), el('b', {}, s.words)),
        el('svg:svg', {viewBox: '0 0 200 12', preserveAspectRatio: 'none', 'aria-hidden': 'true'},
          el('svg:rect', {x: .5, y: 1, width: 199, height: 10, fill: 'none', stroke: 'currentColor'}), el('svg:rect', {x: 0, y: 1, width: 200 * s.p, height: 10, fill: 'currentColor'})))));
  };
  const openBox = v => [
    (v.open || []).length ? fold('open', `Still to be put back (${v.open.length})`, el('ul', {}, v.open.map(t => el('li', {}, t)))) : null,
    (v.facts || []).length ? fold('facts', `Established (${v.facts.length})`, el('ul', {}, v.facts.map(t => el('li', {}, t)))) : null,
  ];
  const log = v => (v.log || []).length ? fold('log', `Journal (${v.log.length})`, el('ol', {class: 'log'},
    v.log.map(l => el('li', {}, el('time', {}, clock(l.at)), el('span', {class: l.who}, l.text))))) : [];

  // ---------------------------------------------------------------- foot
  const caption = () => {
    const v = P.view || P.replay, words = P.replay ? (P.replay.steps[P.replay.at].said || []).join(' ') : P.said;
    fill($('caption'), [!!v, words, v && P.ear.text], () => v ? [el('p', {}, words), P.ear.text && el('p', {class: 'me'}, P.ear.text)] : []);
    $('caption').hidden = !v;
  };
  const earWords = () => {
    if (P.ear.state === 'off') return ['off', 'Speech off'];
    if (P.ear.state === 'loading') return ['dial', 'Loading'];
    if (P.mic === 'denied') return ['fail', 'No mic'];
    if (P.mic !== 'on' && !native) return ['off', 'Mic off'];
    return ['listening', {quiet: 'Too quiet', loud: 'Too loud', noise: 'Noisy'}[P.ear.good] || 'Listening'];
  };
  const bar = () => {
    const b = $('bar');
    if (!b.children.length) b.append(
      el('button', {class: 'emergency', 'data-k': 'emergency', 'aria-keyshortcuts': 'e', onclick: () => emergency('any')}, mark('emergency'), 'Emergency'),
      el('button', {id: 'ear', 'data-k': 'ear', onclick: () => mic.toggle()}, el('span'), el('span'), el('span', {class: 'level', 'aria-hidden': 'true'}, [1, 2, 3, 4, 5].map(() => el('i')))),
      el('button', {class: 'all', 'data-k': 'all', 'aria-label': 'All commands', 'aria-keyshortcuts': '?', onclick: () => openSheet()}, '?'),
      el('button', {class: 'hold', 'data-k': 'hold', 'aria-keyshortcuts': 'h', onclick: hold}, el('span'), el('span')));
    const [shape, words] = P.cue ? [cueMarks[P.cue] || 'unknown', cueWords[P.cue] || P.cue] : earWords();
    const ear = $('ear'), level = P.ear.good ? Math.max(1, Math.min(5, Math.round((P.ear.level + 60) / 11))) : 0;
    ear.className = P.cue ? 'cue' : '';
    fill(ear.children[0], shape, () => mark(shape));
    if (ear.children[1].textContent !== words) ear.children[1].textContent = words;
    [...ear.children[2].children].forEach((i, n) => i.className = n < level ? 'on' : '');
    const h = b.querySelector('.hold'), holding = P.view && P.view.state === 'hold';
    h.disabled = !P.view || !!P.view.ended;
    h.setAttribute('aria-pressed', holding ? 'true' : 'false');
    fill(h.children[0], holding, () => mark(holding ? 'on' : 'hold'));
    h.children[1].textContent = holding ? 'Go on' : 'Hold on';
  };
  const hold = () => P.view && (P.view.state === 'hold' ? command('ready', 'ready') : command('hold-on', 'Hold on'));
  const alarm = v => { const t = v && v.state === 'emergency' ? v.step.act : ''; if ($('alarm').textContent !== t) $('alarm').textContent = t; };
  setInterval(() => {
    for (const t of document.querySelectorAll('[data-until]')) {
      const left = Math.max(0, Math.round((t.dataset.until - Date.now()) / 1000));
      t.textContent = `${Math.floor(left / 60)}:${String(left % 60).padStart(2, '0')}`;
    }
  }, 500);
  const cueWords = {heard: 'Heard', accepted: 'Taken', ask: 'A question', refused: 'Not taken', hold: 'Holding', resume: 'Going on', timer: 'Time', danger: 'Danger'};
  const cueMarks = {heard: 'voice', accepted: 'pass', ask: 'unknown', refused: 'fail', hold: 'hold', resume: 'on', timer: 'dial', danger: 'danger'};
  // A cue is shown where the listening light is: one place to look at, and nothing moves.
  let cueEnd = 0;
  const cue = id => {
    P.cue = id;
    bar();
    clearTimeout(cueEnd);
    cueEnd = setTimeout(() => { P.cue = ''; bar(); }, 1200);
  };

  // ---------------------------------------------------------------- sheets
  const openSheet = () => {
    P.sheet = true;
    const s = $('sheet'), opener = document.activeElement;
    s.replaceChildren(el('div', {}, el('div', {class: 'head'}, el('h2', {id: 'sheet-title'}, 'All commands'), el('button', {'data-k': 'close', onclick: closeSheet}, mark('close'), 'Close', keyHint('Esc'))), sheetBody()));
    s.hidden = false;
    s.opener = opener;
    s.querySelector('button').focus();
  };
  const closeSheet = () => { P.sheet = null; $('sheet').hidden = true; $('sheet').opener?.focus?.(); };
  const keyName = k => k === ' ' ? 'Space' : k === 'Backspace' ? '⌫' : k && k.toUpperCase();
  const sheetBody = () => {
    const words = el('input', {type: 'text', 'data-k': 'words', 'aria-label': 'Type what you would say', autocomplete: 'off', placeholder: 'Type what you would say'});
    return [
      P.view && el('form', {onsubmit: e => { e.preventDefault(); if (words.value.trim()) post('/api/type', {text: words.value.trim()}); closeSheet(); }}, words, el('button', {'data-k': 'send'}, 'Send')),
      P.view && el('div', {class: 'answers'}, commands.map(([id, text, k]) => el('button', {'data-k': 'c' + id, onclick: () => { closeSheet(); command(id, text); }}, text, k && keyHint(keyName(k))))),
      el('section', {}, el('h2', {}, 'Emergency'), el('div', {class: 'answers'}, Object.entries(classes).map(([id, text]) => el('button', {'data-k': 'x' + id, onclick: () => { closeSheet(); emergency(id); }}, mark('emergency'), text)))),
      el('section', {}, el('h2', {}, 'This page'), el('div', {class: 'answers'},
        el('button', {onclick: () => setTheme(P.prefs.theme === 'dark' ? 'light' : 'dark')}, 'Paper or dark'),
        el('button', {onclick: () => { closeSheet(); P.all = true; drawingKey = ''; if (P.view) picture(P.view); }}, 'Whole circuit'),
        P.view && el('button', {'data-k': 'leave', onclick: () => { closeSheet(); leave(); }}, 'To the job list'))),
    ];
  };
  const setTheme = t => { P.prefs.theme = t; theme(); post('/api/prefs', P.prefs); };
  const leave = async () => { P.said = ''; const s = await post('/api/leave', {}); if (s) { P.view = null; take(s); } };

  // ---------------------------------------------------------------- home, first run, replay
  const start = async voice => {
    if (voice) await mic.start();
    const s = await post('/api/start', {appliance: P.appliance, voice: !!voice});
    if (s) take(s);
  };
  const trouble = () => P.trouble && el('p', {class: 'notice', role: 'status'}, P.trouble);
  const speechOff = () => P.ear.state === 'off' && el('p', {class: 'notice', role: 'status'}, 'Speech is off: ' + P.ear.why);
  const home = () => [
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
  const resume = async id => { if (P.prefs.voice) mic.start(); const s = await post(`/api/jobs/${id}/resume`, {}); if (s) take(s); };
  const remove = async id => { const s = await post(`/api/jobs/${id}/delete`, {}); if (s) { P.deleted = id; take(s); } };
  const restore = async () => { const s = await post(`/api/jobs/${P.deleted}/restore`, {}); if (s) { P.deleted = null; take(s); } };
  const replay = async id => {
    const steps = await bus.call('GET', `/api/jobs/${id}/steps`).catch(e => { P.trouble = e.message; draw(); });
    if (!steps) return;
    const list = steps.filter(s => s.view);
    if (list.length) { P.replay = {id, steps: list, at: 0}; draw(); }
  };
  const replayGo = n => { const r = P.replay; r.at = Math.max(0, Math.min(r.steps.length - 1, r.at + n)); sound.stop(); draw(); };
  const replayEnd = () => { P.replay = null; $('main').replaceChildren(); draw(); };
  const replayKeys = () => {
    const r = P.replay, ev = r.steps[r.at].event;
    return [ev.photo && el('img', {alt: 'Picture: ' + ev.photo.id, src: `/api/jobs/${r.id}/photo/${ev.photo.name}`, width: 400}),
      ev.said && el('p', {class: 'words2'}, 'Answer: “' + ev.said.text + '”'),
      el('div', {class: 'answers'},
        el('button', {'data-k': 'prev', onclick: () => replayGo(-1)}, 'Before', keyHint('←')), el('button', {'data-k': 'next', onclick: () => replayGo(1)}, 'Next', keyHint('→')),
        el('button', {'data-k': 'hear', onclick: () => post(`/api/jobs/${r.id}/say/${ev.seq}`, {})}, 'Hear it'), el('button', {'data-k': 'end', onclick: replayEnd}, 'End of replay', keyHint('Esc')))];
  };
  const finishFirst = () => { P.first = null; P.prefs.done = true; post('/api/prefs', P.prefs); draw(); };
  const firstRun = () => P.first === 'choose' ? [
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

  // ---------------------------------------------------------------- microphone and sound of a computer (a phone has its own)
  const native = location.protocol === 'https:';
  const mic = {
    async start() {
      if (native || P.mic === 'on' || !navigator.mediaDevices) return;
      try {
        // Processing is off: it changes what the recogniser was trained on.
        mic.media = await navigator.mediaDevices.getUserMedia({audio: {channelCount: 1, echoCancellation: false, noiseSuppression: false, autoGainControl: false}});
        mic.ctx = mic.ctx || new AudioContext();
        await mic.ctx.audioWorklet.addModule('/worklet.js');
        mic.node = new AudioWorkletNode(mic.ctx, 'ear', {numberOfInputs: 1, numberOfOutputs: 0});
        mic.node.port.onmessage = e => bus.sound && bus.sound(e.data);
        mic.source = mic.ctx.createMediaStreamSource(mic.media);
        mic.source.connect(mic.node);
        await mic.ctx.resume();
        P.mic = 'on';
        post('/api/event', {step: '', event: {at: 0, type: 'device', device: {kind: 'mic-on'}}});
      } catch (e) {
        P.mic = 'denied';
        post('/api/event', {step: '', event: {at: 0, type: 'device', device: {kind: 'mic-off', text: 'The browser gave no microphone (' + e.name + '). Touch and keys do everything.'}}});
      }
      draw();
    },
    stop() { // a worklet that is still fed would go on sending silence between the blocks of the next one
      mic.media?.getTracks().forEach(t => t.stop());
      mic.source?.disconnect();
      if (mic.node) mic.node.port.onmessage = null;
      P.mic = 'off';
      draw();
    },
    resume() { if (mic.ctx && mic.ctx.state === 'suspended') mic.ctx.resume(); },
    toggle() { if (native) return; if (P.mic === 'on') mic.stop(); else mic.start(); },
  };
  // The browser keeps a page silent until it is touched once; what was to be said then is said at the first touch.
  const sound = {
    now: null, late: null,
    play(url, id) {
      if (id) sound.stop();
      const a = new Audio(url), me = {a, id};
      const end = cut => { if (sound.now === me) sound.now = null; if (id) bus.call('POST', `/desk/spoke?id=${encodeURIComponent(id)}${cut ? '&cut=1' : ''}`).catch(() => {}); };
      me.end = end;
      if (id) sound.now = me;
      a.onended = () => end(false);
      a.onerror = () => end(true);
      a.play().catch(e => {
        if (sound.now === me || !id) end(true);
        if (e.name === 'NotAllowedError' && id) sound.late = url;
      });
    },
    stop() { const n = sound.now; sound.now = null; if (n) { n.a.onended = n.a.onerror = null; n.a.pause(); n.end(true); } },
  };
  for (const kind of ['pointerup', 'keydown']) addEventListener(kind, () => {
    mic.resume();
    if (!sound.late) return;
    const url = sound.late;
    sound.late = null;
    if (!sound.now && !P.view) new Audio(url).play().catch(() => {});
  });

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
    if (e.key === 'e' || e.key === 'E') { e.preventDefault(); if (P.sheet) closeSheet(); emergency('any', 'key'); return; }
    if (e.key === '?') { e.preventDefault(); if (P.sheet) closeSheet(); else openSheet(); return; }
    if (P.replay) { if (e.key === 'ArrowRight') replayGo(1); if (e.key === 'ArrowLeft') replayGo(-1); return; }
    const digit = /^(Digit|Numpad)\d$/.test(e.code) ? e.code.at(-1) : '';
    if (!P.view) {
      if (digit === '1' || digit === '2') { const b = $('main').querySelectorAll('#begin button, .stack:not(section) button')[digit - 1]; if (b && !b.disabled) b.click(); }
      return;
    }
    const s = P.view.step, numeric = s.keypad && s.keypad.length;
    if (digit && (!numeric || e.shiftKey)) { const a = (s.answers || [])[digit - 1]; if (a) { e.preventDefault(); answer(a, 'key'); } return; }
    if (numeric) {
      const c = digit || (e.key === ',' ? '.' : e.key);
      if (digit || c === '.' || c === '-') { e.preventDefault(); type(c); return; }
      if (e.key === 'Backspace' && P.typed) { e.preventDefault(); type('del'); return; }
      if (e.key === 'Enter') { e.preventDefault(); number(s.keypad[P.unit % s.keypad.length], 'key'); return; }
      if (e.key === 'ArrowUp' || e.key === 'ArrowDown') {
        e.preventDefault();
        P.unit = (P.unit + (e.key === 'ArrowDown' ? 1 : s.keypad.length - 1)) % s.keypad.length;
        document.querySelectorAll('.units button').forEach((b, i) => b.className = i === P.unit ? 'solid' : '');
        return;
      }
      if (e.key === 'x') { display('over', 'over limit'); return; }
    }
    if (e.key === 'h') { e.preventDefault(); hold(); return; }
    const c = commands.find(c => c[2] === e.key);
    if (c) { e.preventDefault(); command(c[0], c[1], 'key'); }
  });

  // ---------------------------------------------------------------- begin
  addEventListener('pagehide', () => sound.stop());
  if (native) bus.port(); else bus.socket();
  paint();
})();
