// What all that is kept on a device and sent later have in common.

/** For calls that nobody waits for: whose session has ended is not asked to sign in. */
export const BY_ITSELF = { signIn: false };

/** Those who want to hear when something has changed. */
export class Bell {
  #listeners = new Set();

  /** Calls `listener()` at every ring; returns what ends that. */
  listen(listener) {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  ring() {
    this.#listeners.forEach((listener) => listener());
  }
}

function stamp(bytes) {
  return [...crypto.getRandomValues(new Uint8Array(bytes))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** A name that nothing else has. */
export function newId() {
  // randomUUID is only there in secure contexts; a phone in the garden may use plain http.
  return stamp(16);
}

/** Tells one writing of a change from the next. */
export function newStamp() {
  return `${Date.now()}-${stamp(4)}`;
}

/**
 * Asks the server with `call`. Returns {outcome, answer, message}, where outcome is 'done',
 * 'unreachable' (try again later), 'forbidden' (not now, or not by this account) or 'invalid'
 * (never as it is; `message` says why).
 */
export async function attempt(call) {
  try {
    return { outcome: 'done', answer: await call() };
  } catch (problem) {
    if (problem.name !== 'ApiError') {
      throw problem;
    }
    return { outcome: meaning(problem), status: problem.status, message: problem.message };
  }
}

function meaning({ status, code }) {
  if (status === 401 || status === 403) {
    return 'forbidden';
  }
  return [400, 413, 422].includes(status) || code === 'refused' ? 'invalid' : 'unreachable';
}

/** Runs one after the other what is given to it, each `work()` after all before it have ended. */
export function queue() {
  let running = Promise.resolve();
  return (work) => {
    running = running.then(work).catch((problem) => {
      console.error(problem);
      return 'refused';
    });
    return running;
  };
}
