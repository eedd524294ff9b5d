// The checker in its worker: one command at a time, the files that have changed sent along.
import { byId } from './element.js';

const text = (id) => byId(id).textContent.trim();

async function unpacked(packed) {
  const bytes = Uint8Array.from(atob(packed), (each) => each.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

export class Checker {
  constructor() {
    this.wasm = unpacked(text('checker'));
    this.sent = new Map();
    this.waiting = new Map();
    this.number = 0;
    this.queue = Promise.resolve();
    this.begin();
  }

  begin() {
    const script = new Blob([text('worker')], { type: 'text/javascript' });
    const address = URL.createObjectURL(script);
    this.worker = new Worker(address);
    this.worker.onmessage = ({ data }) => this.waiting.get(data.number)?.(data);
    this.worker.onerror = (event) => {
      event.preventDefault();
      for (const tell of this.waiting.values()) tell({ failure: event.message || 'the checker does not start' });
    };
    this.sent.clear();
    this.ready = this.wasm.then((wasm) => this.ask({ wasm })).finally(() => URL.revokeObjectURL(address));
  }

  ask(message) {
    const number = (this.number += 1);
    return new Promise((tell) => {
      this.waiting.set(number, (answer) => {
        this.waiting.delete(number);
        tell(answer);
      });
      this.worker.postMessage({ ...message, number });
    });
  }

  /** What has to be sent of `files` for the worker to have them all. */
  changes(files) {
    const written = [...files].filter(([path, bytes]) => this.sent.get(path) !== bytes);
    const removed = [...this.sent.keys()].filter((path) => !files.has(path));
    for (const path of removed) this.sent.delete(path);
    for (const [path, bytes] of written) this.sent.set(path, bytes);
    return { written, removed };
  }

  /** The outcome of a command line on `files`: {code, result, errors, made}, or {failure}. It does not run
   *  where it is not `wanted` any more when its turn comes. */
  run(words, files, wanted = () => true) {
    const turn = this.queue.then(async () => {
      if (!wanted()) return { failure: 'stopped', stopped: true };
      const begun = await this.ready;
      if (begun.failure) return begun;
      const answer = await this.ask({ ...this.changes(files), words });
      // What has run out of memory or into a trap cannot be trusted with another command.
      if (answer.failure && !answer.stopped) this.renew();
      return answer;
    });
    this.queue = turn.catch(() => {});
    return turn;
  }

  renew() {
    this.worker.terminate();
    this.begin();
  }

  /** Ends the command that runs; those that wait behind it run in a new worker. */
  stop() {
    const told = [...this.waiting.values()];
    this.renew();
    for (const tell of told) tell({ failure: 'stopped', stopped: true });
  }
}
