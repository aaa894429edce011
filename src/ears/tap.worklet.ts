/** Taps the microphone: hands every block of samples, stamped with the audio clock, to the listener's port. Computes nothing. */
import type { TapBlock } from './messages.ts';

/** Samples sent at once: eight render quanta, 21 ms at 48 kHz, so that a decision is never held up by more. */
const BLOCK = 1024;
const QUANTUM = 128;

// The worklet's own globals; no library types them.
declare const currentTime: number;
declare const sampleRate: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

class Tap extends AudioWorkletProcessor {
  private listener: MessagePort | null = null;
  private samples = new Float32Array(BLOCK);
  private filled = 0;
  private contextS = 0;
  private expectedS = 0;
  private lost = 0;
  private ended = false;

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<MessagePort | null>) => {
      this.ended = data === null;
      this.listener = data;
    };
  }

  process(inputs: Float32Array[][]): boolean {
    const channel = inputs[0]?.[0];
    if (this.ended || !channel) return !this.ended;
    if (this.filled === 0) this.contextS = currentTime;
    if (this.expectedS > 0) this.lost += Math.max(0, Math.round(((currentTime - this.expectedS) * sampleRate) / QUANTUM));
    this.expectedS = currentTime + channel.length / sampleRate;
    this.samples.set(channel.subarray(0, BLOCK - this.filled), this.filled);
    this.filled += channel.length;
    if (this.filled >= BLOCK) this.send();
    return true;
  }

  private send(): void {
    const block: TapBlock = { samples: this.samples, contextS: this.contextS, lost: this.lost };
    this.listener?.postMessage(block, [this.samples.buffer]);
    this.samples = new Float32Array(BLOCK);
    this.filled = 0;
    this.lost = 0;
  }
}

registerProcessor('tap', Tap);
