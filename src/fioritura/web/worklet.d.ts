// What a script that runs beside the sound finds there (Web Audio API, AudioWorkletGlobalScope): TypeScript's library has none of it.

export {};

declare global {
  const currentFrame: number;

  class AudioWorkletProcessor {
    readonly port: MessagePort;
  }

  function registerProcessor(name: string, made: new () => AudioWorkletProcessor): void;
}
