// Microphone and sound of a computer. A phone has its own; the page asks its shell for them.
import {T} from '/words.js';
import {tab} from './tools.js';
import {P, bus, post, draw, native, shell, on} from './core.js';

const shellNews = s => { P.shell = s; P.mic = s.mic ? 'on' : 'off'; draw(); };
export const mic = {
  async start() {
    if (native) { await shell('mic', {on: true}); return; }
    if (P.mic === 'on' || !navigator.mediaDevices) return;
    try {
      mic.ctx = mic.ctx || new AudioContext();
      await (mic.module ||= mic.ctx.audioWorklet.addModule('/worklet.js')); // before the microphone opens, so that no first word is lost
      // Processing is off: it changes what the recogniser was trained on.
      mic.media = await navigator.mediaDevices.getUserMedia({audio: {channelCount: 1, echoCancellation: false, noiseSuppression: false, autoGainControl: false}});
      mic.node = new AudioWorkletNode(mic.ctx, 'ear', {numberOfInputs: 1, numberOfOutputs: 0});
      mic.node.port.onmessage = e => bus.sound && bus.sound(e.data);
      mic.source = mic.ctx.createMediaStreamSource(mic.media);
      mic.source.connect(mic.node);
      await mic.ctx.resume();
      P.mic = 'on';
      tab.set('mic', true);
      post('/api/event', {step: '', event: {at: 0, type: 'device', device: {kind: 'mic-on'}}});
    } catch (e) {
      P.mic = 'denied';
      post('/api/event', {step: '', event: {at: 0, type: 'device', device: {kind: 'mic-off', text: T('no-microphone', {name: e.name})}}});
    }
    draw();
  },
  stop() { // a worklet that is still fed would go on sending silence between the blocks of the next one
    mic.media?.getTracks().forEach(t => t.stop());
    mic.source?.disconnect();
    if (mic.node) mic.node.port.onmessage = null;
    P.mic = 'off';
    tab.set('mic', false);
    draw();
  },
  resume() { if (mic.ctx && mic.ctx.state === 'suspended') mic.ctx.resume(); },
  toggle() { if (native) { shell('mic', {on: P.mic !== 'on'}); return; } if (P.mic === 'on') mic.stop(); else mic.start(); },
};
// The browser keeps a page silent until it is touched once; what was to be said then is said at the first touch.
export const sound = {
  now: null, late: null,
  // What has an id sounds alone; the core waits for its end, unless it is of the record only.
  play(url, id, awaited = true) {
    if (id) sound.stop();
    const a = new Audio(url), me = {a, id};
    const end = cut => { if (sound.now === me) sound.now = null; if (id && awaited) bus.call('POST', `/desk/spoke?id=${encodeURIComponent(id)}${cut ? '&cut=1' : ''}`).catch(() => {}); };
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
on('loaded', s => { if (s.view && tab.get('mic')) mic.start(); }); // a reload takes the microphone away
on('open', () => {
  if (P.mic === 'on') mic.resume();
  if (native) shell('state').then(s => s && shellNews(s));
});
on('shell', m => shellNews(m.shell));
on('hush', () => sound.stop());
on('sound', m => sound.play(m.url, m.id));
