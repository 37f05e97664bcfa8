// Talks to the server. Every change carries the token that the server gave this session.

let csrf = '';

/** What the server, or the way to it, refused. `status` is 0 when the server could not be reached. */
export class ApiError extends Error {
  constructor(status, code, message, field, body) {
    super(message);
    this.name = 'ApiError';
    this.status = status;
    this.code = code;
    this.field = field;
    this.body = body;
  }
}

/** Takes the token of the session, as told by /api/me. */
export function useToken(token) {
  csrf = token ?? '';
}

async function send(method, path, body, options = {}) {
  const headers = { Accept: 'application/json' };
  if (method !== 'GET') {
    headers['X-CSRF'] = csrf;
  }
  let payload;
  if (body instanceof Blob || body instanceof ArrayBuffer) {
    payload = body;
    headers['Content-Type'] = options.type ?? body.type ?? 'application/octet-stream';
  } else if (typeof body === 'string') {
    payload = body;
    headers['Content-Type'] = options.type ?? 'text/plain;charset=utf-8';
  } else if (body !== undefined) {
    payload = JSON.stringify(body);
    headers['Content-Type'] = 'application/json';
  }
  let response;
  try {
    response = await fetch(`/api${path}`, {
      method,
      headers,
      body: payload,
      credentials: 'same-origin',
      cache: 'no-store',
      signal: options.signal,
    });
  } catch (cause) {
    if (cause.name === 'AbortError') {
      throw cause;
    }
    throw new ApiError(0, 'unreachable', String(cause.message ?? cause));
  }
  const type = response.headers.get('Content-Type') ?? '';
  const answer =
    response.status === 204
      ? undefined
      : type.includes('json')
        ? await response.json().catch(() => undefined)
        : await response.text();
  if (!response.ok) {
    const told = answer !== null && typeof answer === 'object' ? answer : {};
    throw new ApiError(
      response.status,
      told.code ?? `http-${response.status}`,
      told.message ?? response.statusText ?? String(response.status),
      told.field,
      told,
    );
  }
  return answer;
}

let tellTrouble;

/** Takes what shows that nothing can be saved; it is called with the refusal, and with nothing once a change is saved. */
export function troubleWith(tell) {
  tellTrouble = tell;
}

/** Sends it, and tells what its end says of the place where changes are kept. */
async function sendAndTell(method, path, body, options) {
  const changes = method !== 'GET' && !options.asks;
  try {
    const answer = await send(method, path, body, options);
    if (changes) {
      tellTrouble?.(undefined);
    }
    return answer;
  } catch (problem) {
    if (changes && problem.status === 503) {
      tellTrouble?.(problem);
    }
    throw problem;
  }
}

let askToSignIn;

/** Takes what asks the owner to sign in again; it is called when a change found the session ended. */
export function signInWith(ask) {
  askToSignIn = ask;
}

/** Asks the owner to sign in; whether it was done. */
export async function askedToSignIn() {
  const me = await send('GET', '/me');
  useToken(me.csrf);
  return !me.needsLogin || Boolean(await askToSignIn?.());
}

/** A change that the server refused only because the session or the program is a new one is sent again. */
async function request(method, path, body, options = {}) {
  try {
    return await sendAndTell(method, path, body, options);
  } catch (problem) {
    if (method === 'GET' || !['csrf', 'signed-out'].includes(problem.code)) {
      throw problem;
    }
    if (path === '/login' || options.signIn === false) {
      useToken((await send('GET', '/me')).csrf);
    } else {
      await askedToSignIn();
    }
    return sendAndTell(method, path, body, options);
  }
}

export const api = {
  get: (path, options) => request('GET', path, undefined, options),
  /** A question too long for an address: nothing is changed by it. */
  ask: (path, body, options) => request('POST', path, body, { ...options, asks: true }),
  post: (path, body, options) => request('POST', path, body ?? {}, options),
  put: (path, body, options) => request('PUT', path, body ?? {}, options),
  delete: (path, body, options) => request('DELETE', path, body, options),
};
