// The camera of the page: a viewfinder with a frame to aim at, what the core sees in it, and pictures with marked terminals. Frames
// go to the core with their colour; nothing is kept here. Without a camera the page is as it was.
import {T, numbers} from '/words.js';
import {$, el, mark} from './tools.js';
import {P, bus, post, draw, native, shell, on} from './core.js';

const E = {has: false, on: false, denied: false, torch: false, canTorch: false, still: null, marks: [], busy: false, seen: null, sent: -1e9};
const longest = {meter: [1000, 750, 1], lamp: [640, 480, 2], fire: [320, 240, 3]}; // pixels, and the kind's number in a frame's head
const mostMarks = 24; // of one picture, as the core takes
const meterEvery = 190; // ms between two frames of the meter

// ---------------------------------------------------------------- is there one?
const eyeHello = async () => {
  if (native) { // the phone's own camera, which only its shell can open
    const s = await shell('state');
    E.has = !!(s && s.eye);
    if (E.has) tell('eye-on');
    draw();
    return;
  }
  if (!navigator.mediaDevices || !navigator.mediaDevices.enumerateDevices) return;
  const list = await navigator.mediaDevices.enumerateDevices().catch(() => []);
  E.has = list.some(d => d.kind === 'videoinput') && !E.denied;
  if (E.has) tell('eye-on');
  draw();
};
export const eyeHas = () => E.has;
const tell = (kind, text) => post('/api/event', {step: '', event: {at: 0, type: 'device', device: {kind, text}}});

const video = el('video', {muted: true, playsinline: true, 'aria-hidden': 'true'});
video.muted = true;
const view = el('img', {alt: '', hidden: true}); // stands for the video on a phone
const canvas = el('canvas', {class: 'still', hidden: true});
const over = el('svg:svg', {viewBox: '0 0 100 100', preserveAspectRatio: 'none', 'aria-hidden': 'true'});
const words = el('p', {class: 'seenwords'}, '\u00a0');
const finder = el('div', {class: 'finder'}, native ? view : video, canvas, over);
finder.addEventListener('click', e => {
  const r = finder.getBoundingClientRect(), x = (e.clientX - r.x) / r.width, y = (e.clientY - r.y) / r.height;
  if (x < 0 || y < 0 || x >= 1 || y >= 1) return;
  if (E.still) { addMark(x, y); return; }
  if (watching()) bus.call('POST', '/api/eye/aim', {x, y}).catch(() => {});
});

const open = async () => {
  if (E.on || E.busy) return;
  if (native) { E.on = true; draw(); return; }
  E.busy = true;
  try {
    E.media = await navigator.mediaDevices.getUserMedia({video: {facingMode: 'environment', width: {ideal: 1280}, height: {ideal: 960}, frameRate: {ideal: 30}}});
    video.srcObject = E.media;
    await video.play();
    const track = E.media.getVideoTracks()[0];
    track.onended = close;
    E.canTorch = !!(track.getCapabilities && track.getCapabilities().torch);
    E.on = true;
    E.clock = null;
    tell('eye-on');
    each();
  } catch (e) {
    E.denied = true;
    E.has = false;
    E.media && E.media.getTracks().forEach(t => t.stop());
    tell('eye-off', e.name === 'NotAllowedError' ? T('camera-refused') : T('no-camera'));
  }
  E.busy = false;
  draw();
};
const close = () => {
  if (native && E.asked) shell('eye', {kind: E.asked = ''});
  E.media && E.media.getTracks().forEach(t => t.stop());
  video.srcObject = null;
  Object.assign(E, {on: false, media: null, torch: false, still: null, marks: [], seen: null});
  draw();
};
const torch = () => {
  E.torch = !E.torch;
  if (native) { shell('torch', {on: E.torch}); draw(); return; }
  E.media.getVideoTracks()[0].applyConstraints({advanced: [{torch: E.torch}]}).catch(() => { E.canTorch = false; draw(); });
  draw();
};

// ---------------------------------------------------------------- frames
const watching = () => {
  const v = P.view;
  return v && !P.replay && (v.state === 'ask' || v.state === 'confirm') && v.step.part !== 'A' && longest[v.step.eye] ? v.step.eye : '';
};
const each = () => {
  if (!E.on) return;
  if (video.requestVideoFrameCallback) video.requestVideoFrameCallback((now, meta) => { each(); frame(now, meta); });
  else setTimeout(() => { each(); frame(performance.now(), {}); }, 33);
};
const grab = el('canvas'), pen = grab.getContext('2d', {willReadFrequently: true});
// Seconds of exposure, where the camera tells them (in tenths of a millisecond); else 0.
const exposure = () => (video.srcObject?.getVideoTracks()[0]?.getSettings().exposureTime || 0) / 1e4;
const frame = (now, meta) => {
  const kind = watching();
  if (!kind || !bus.sound || !video.videoWidth) return;
  if (!E.clock) E.clock = meta.captureTime ? m => m.captureTime : meta.mediaTime ? m => m.mediaTime * 1000 : () => performance.now();
  const at = E.clock(meta);
  if (!(at >= 0) || kind === 'meter' && now - E.sent < meterEvery) return;
  const began = performance.now(), [long, short, n] = longest[kind], vw = video.videoWidth, vh = video.videoHeight;
  const k = Math.min(1, long / Math.max(vw, vh), short / Math.min(vw, vh)), w = Math.max(1, Math.floor(vw * k)), h = Math.max(1, Math.floor(vh * k));
  if (grab.width !== w || grab.height !== h) { grab.width = w; grab.height = h; }
  pen.drawImage(video, 0, 0, w, h);
  const rgba = pen.getImageData(0, 0, w, h).data, cw = w + 1 >> 1, ch = h + 1 >> 1;
  const msg = new ArrayBuffer(32 + w * h + 2 * cw * ch), head = new DataView(msg), luma = new Uint8Array(msg, 32);
  [82, 66, 101, 121, 101, 1, 13, 10, n, 1].forEach((b, i) => head.setUint8(i, b));
  head.setUint16(10, w, true);
  head.setUint16(12, h, true);
  head.setBigInt64(16, BigInt(Math.round(at * 1e6)), true);
  head.setFloat64(24, exposure(), true);
  for (let i = 0, j = 0; i < luma.length; i++, j += 4) luma[i] = (77 * rgba[j] + 150 * rgba[j + 1] + 29 * rgba[j + 2] + 128) >> 8;
  // one pixel of each four stands for their colour
  const cb = new Uint8ClampedArray(msg, 32 + w * h, cw * ch), cr = new Uint8ClampedArray(msg, 32 + w * h + cw * ch);
  for (let y = 0, i = 0; y < ch; y++) for (let x = 0; x < cw; x++, i++) {
    const j = 4 * (2 * y * w + 2 * x), r = rgba[j], g = rgba[j + 1], b = rgba[j + 2];
    cb[i] = 128 - .1687 * r - .3313 * g + .5 * b;
    cr[i] = 128 + .5 * r - .4187 * g - .0813 * b;
  }
  E.sent = now;
  bus.sound(msg);
  performance.measure('frame-' + kind, {start: began, end: performance.now()});
  if (performance.getEntriesByName('frame-' + kind).length > 400) performance.clearMeasures('frame-' + kind);
};

// On a phone the shell is asked for frames of what the step wants, and the newest one is shown.
const ask = () => {
  const kind = E.on ? watching() : '';
  if (kind === (E.asked || '')) return;
  shell('eye', {kind: E.asked = kind});
};
// eyeSeen takes what the core made of the newest frame.
const eyeSeen = s => {
  E.seen = s;
  if (native && E.on && !E.still) { view.src = '/api/eye/frame?' + performance.now(); view.hidden = false; }
  lay();
};

// lay draws over the picture: the frame to aim at, what is seen, the marks.
const lay = () => {
  const s = E.seen && P.view && E.seen.step === P.view.step.id ? E.seen : null, kind = watching();
  const poly = (pts, cls) => ['out', 'in'].map(c => el('svg:polygon', {class: cls + ' ' + c, points: pts.map(p => `${100 * p[0]},${100 * p[1]}`).join(' ')}));
  const out = [];
  if (!E.still && kind === 'meter') out.push(poly([[.15, .25], [.85, .25], [.85, .75], [.15, .75]], 'aim'));
  if (!E.still && kind === 'fire' && !s) out.push(poly([[.34, .34], [.66, .34], [.66, .66], [.34, .66]], 'aim'));
  if (!E.still && kind === 'lamp') out.push(poly([[.35, .35], [.65, .35], [.65, .65], [.35, .65]], 'aim'));
  if (!E.still && s) for (const b of s.boxes || []) out.push(poly(b, 'digit'));
  if (E.still) E.marks.forEach(m => out.push(poly([[m.x - .02, m.y - .02], [m.x + .02, m.y - .02], [m.x + .02, m.y + .02], [m.x - .02, m.y + .02]], 'digit')));
  over.replaceChildren(...out.flat(2));
  const text = E.still ? (E.marks.length ? E.marks.map(m => m.name).join(', ') : T('touch-terminals'))
    : s ? (s.words && !s.reason ? T(s.steady ? 'seen' : 'seeing', {what: s.words}) : s.reason || '') + (s.words && s.reason ? ' ' + T('so-far', {what: s.words}) : '') : kind ? T('looking') : '';
  if (words.textContent !== text) words.textContent = text || '\u00a0';
  words.classList.toggle('steady', !!(s && s.steady && !s.reason));
};

// ---------------------------------------------------------------- pictures
// eyePhoto waits for the picture that the phone takes by itself; one from before the work is then marked.
const eyePhoto = async (id, run) => {
  if (!native || id !== 'before') return run && run();
  const newest = async () => (await bus.call('GET', '/api/eye/before').catch(() => ({name: ''}))).name, old = await newest();
  if (run) await run();
  for (let i = 0; i < 30; i++) {
    await new Promise(ok => setTimeout(ok, 400));
    const name = await newest();
    if (!name || name === old) continue;
    view.src = `/api/jobs/${P.view.job}/photo/${name}`;
    view.hidden = false;
    Object.assign(E, {on: true, still: id, photo: name, marks: []});
    P.photo = null;
    draw();
    return;
  }
};
const take = async id => {
  if (native) { await eyePhoto(id, () => shell('picture', {id})); return; }
  const k = Math.min(1, 1600 / Math.max(video.videoWidth, video.videoHeight));
  canvas.width = Math.round(video.videoWidth * k);
  canvas.height = Math.round(video.videoHeight * k);
  canvas.getContext('2d').drawImage(video, 0, 0, canvas.width, canvas.height);
  if (id === 'before') { E.still = id; E.marks = []; draw(); lay(); return; }
  use(id);
};
const use = id => {
  E.busy = true;
  draw();
  if (native) {
    const sent = E.marks.length ? bus.call('POST', '/api/eye/marks', {photo: E.photo, marks: E.marks}) : Promise.resolve();
    sent.catch(e => { P.trouble = e.message; }).then(() => { Object.assign(E, {busy: false, still: null, marks: []}); view.hidden = true; draw(); lay(); });
    return;
  }
  canvas.toBlob(async b => {
    try {
      const r = await fetch('/photo?id=' + encodeURIComponent(id), {method: 'POST', body: b});
      if (!r.ok) throw new Error(await r.text());
      if (E.marks.length) await bus.call('POST', '/api/eye/marks', {marks: E.marks});
      P.photo = null;
    } catch (e) { P.trouble = T('picture-failed', {why: e.message}); }
    Object.assign(E, {busy: false, still: null, marks: []});
    draw();
    lay();
  }, 'image/jpeg', .9);
};
const addMark = (x, y) => {
  const names = E.names || [], used = new Set(E.marks.map(m => m.name));
  const name = names.find(t => !used.has(t)) || T('mark', {n: numbers[E.marks.length + 1].replace('-', ' ')}); // a name is spoken
  if (E.marks.length < mostMarks) E.marks.push({x, y, name});
  draw();
  lay();
};

// ---------------------------------------------------------------- the box on the card
const labels = {meter: T('eye-meter'), lamp: T('eye-lamp'), fire: T('eye-fire'), 'photo.before': T('eye-photo'), 'photo.after': T('eye-photo'), plate: T('eye-plate')};
const pictureOf = {'photo.before': 'before', 'photo.after': 'after', plate: 'plate'};
// After the work the picture from before it stands beside the live view, its marks with their numbers.
const beforeBox = () => {
  const fig = el('figure', {class: 'finder beforehand'});
  bus.call('GET', '/api/eye/before').then(b => {
    if (!b.name) return;
    fig.append(el('img', {alt: T('before-work'), src: `/api/jobs/${P.view.job}/photo/${b.name}`}),
      el('svg:svg', {viewBox: '0 0 100 100', preserveAspectRatio: 'none', 'aria-hidden': 'true'}, (b.marks || []).map(m => el('svg:circle', {cx: 100 * m.x, cy: 100 * m.y, r: 3.2, fill: 'none', stroke: '#fff', 'stroke-width': 1.2}))),
      el('ol', {class: 'pins', 'aria-hidden': 'true'}, (b.marks || []).map((m, i) => { const li = el('li', {}, String(i + 1)); li.style.left = 100 * m.x + '%'; li.style.top = 100 * m.y + '%'; return li; })));
    fig.after(el('ol', {class: 'marks'}, (b.marks || []).map((m, i) => el('li', {}, `${i + 1}  ${m.name}`))));
  }).catch(() => {});
  return fig;
};
export const eyeKey = v => [v.step.eye, v.step.id, v.step.marks, v.state, v.step.part, E.has, E.on, E.busy, E.torch, E.canTorch, E.still, E.marks.length, P.prefs.keep, !!P.replay];
export const eyeBox = v => {
  const kind = v.step.eye;
  if (kind === 'photo.before') E.names = v.step.marks; // the step may have gone on when they are touched
  if (native) ask();
  if (P.replay || v.state === 'ended' || v.state === 'emergency' || !E.on && (!kind || !E.has) && kind !== 'photo.after') return [];
  if (kind === 'photo.after' && !E.on && !E.has) return [beforeBox()];
  const beside = kind === 'photo.after' ? beforeBox() : null;
  if (!E.on) return [beside, el('div', {class: 'answers'}, el('button', {'data-k': 'eye', disabled: E.busy, onclick: open}, mark('photo'), labels[kind]))];
  canvas.hidden = native || !E.still;
  const id = pictureOf[kind], key = (k, text, run, pressed) => el('button', {'data-k': k, disabled: E.busy, 'aria-pressed': pressed == null ? null : pressed ? 'true' : 'false', onclick: run}, text);
  lay();
  return [beside ? el('div', {class: 'beside'}, el('div', {}, beside), el('div', {}, finder)) : finder, words, el('div', {class: 'answers'},
    E.still ? [key('eye-use', E.marks.length ? T('use-it') : T('use-unmarked'), () => use(E.still)), E.marks.length > 0 && key('eye-unmark', T('unmark'), () => { E.marks.pop(); draw(); lay(); }),
      key('eye-again', T('again'), () => { E.still = null; E.marks = []; draw(); lay(); })]
      : [id && key('eye-take', T('take-picture'), () => take(id)), (E.canTorch || native) && key('eye-torch', T('light'), torch, E.torch),
        !id && key('eye-keep', T('keep-pictures'), () => { P.prefs.keep = !P.prefs.keep; post('/api/prefs', P.prefs); draw(); }, P.prefs.keep)],
    key('eye-close', T('camera-off'), close))];
};
addEventListener('pagehide', close);
on('open', eyeHello);
on('eye', m => eyeSeen(m.eye));
on('photo', m => { if (native) eyePhoto(m.id); });
on('device', m => { if (native && E.on && m.device.kind === 'eye-off') { E.asked = ''; close(); } }); // the phone has no camera to give
