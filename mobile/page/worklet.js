// Microphone to 16 kHz, mono, 16 bit, in blocks of 100 ms. Whatever the device's rate is, every output sample is the mean of
// the input it spans: a plain low-pass that costs nothing and keeps speech whole.
class Ear extends AudioWorkletProcessor {
  constructor() {
    super();
    this.step = sampleRate / 16000;
    this.block = new Int16Array(1600);
    this.n = 0;
    this.sum = 0;
    this.weight = 0;
    this.left = this.step; // input samples still to go into the output sample
  }
  process(inputs) {
    const channel = inputs[0][0];
    if (!channel) return true;
    for (let x of channel) {
      let part = 1;
      while (part >= this.left) {
        this.sum += x * this.left;
        this.weight += this.left;
        part -= this.left;
        this.put(this.sum / this.weight);
        this.sum = this.weight = 0;
        this.left = this.step;
      }
      this.sum += x * part;
      this.weight += part;
      this.left -= part;
    }
    return true;
  }
  put(v) {
    this.block[this.n++] = Math.max(-1, Math.min(1, v)) * 32767;
    if (this.n === this.block.length) {
      this.port.postMessage(this.block.buffer, [this.block.buffer]);
      this.block = new Int16Array(1600);
      this.n = 0;
    }
  }
}
registerProcessor('ear', Ear);
