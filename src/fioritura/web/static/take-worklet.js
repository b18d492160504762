/** Runs beside the sound: hands on what the microphone hears, block by block, with the frame at which each block begins. */

const BLOCK = 2048;

class Recorder extends AudioWorkletProcessor {
  constructor() {
    super();
    this.block = new Float32Array(BLOCK);
    this.filled = 0;
    this.at = 0;
  }

  /** @param {Float32Array[][]} inputs */
  process(inputs) {
    const channels = inputs[0];
    if (!channels?.length) return true;
    if (this.filled === 0) this.at = currentFrame;
    for (let frame = 0; frame < channels[0].length; frame++) {
      let sum = 0;
      for (const channel of channels) sum += channel[frame];
      this.block[this.filled++] = sum / channels.length;
    }
    if (this.filled >= BLOCK) {
      const samples = this.block.slice(0, this.filled);
      this.port.postMessage({ at: this.at, samples }, [samples.buffer]);
      this.filled = 0;
    }
    return true;
  }
}

registerProcessor("recorder", Recorder);
