// The scene of a site, its changes, and what they would do. One question to the server is on its way
// at a time; of those asked meanwhile only the latest is sent.

/** Sends the latest of what was asked, one at a time. */
function latestWins(send, receive, failed) {
  let waiting;
  let busy = false;
  async function run() {
    busy = true;
    while (waiting) {
      const question = waiting;
      waiting = undefined;
      try {
        const answer = await send(question);
        receive(answer, question, Boolean(waiting));
      } catch (problem) {
        failed(problem, question);
      }
    }
    busy = false;
  }
  return {
    ask(question) {
      waiting = question;
      if (!busy) {
        run();
      }
    },
    forget() {
      waiting = undefined;
    },
  };
}

export class SiteEditor extends EventTarget {
  constructor(api, siteId, state) {
    super();
    this.api = api;
    this.base = `/sites/${encodeURIComponent(siteId)}`;
    this.state = state;
    this.scene = undefined;
    this.cost = undefined;
    this.quick = latestWins(
      (question) => this.api.ask(`${this.base}/try`, { operations: question.operations, cost: false }),
      (answer, question, more) => {
        const waited = performance.now() - question.asked;
        this.tell('figures', { figures: answer, waited, more });
      },
      (problem) => this.tell('untried', { problem }),
    );
    this.slow = latestWins(
      (question) => this.api.ask(`${this.base}/try/cost`, { operations: question.operations }),
      (answer, question) => {
        if (question.round === this.round) {
          this.tell('cost', { cost: answer, waited: performance.now() - question.asked });
        }
      },
      () => {},
    );
    this.serial = 0;
    this.round = 0;
  }

  tell(type, detail) {
    this.dispatchEvent(new CustomEvent(type, { detail }));
  }

  async load() {
    this.take({ scene: await this.api.get(`${this.base}/scene`) });
  }

  /** Takes what the server answered; asks again if its plan is still being made. */
  take({ state, scene }) {
    if (state) {
      this.state = state;
      this.tell('state', { state });
    }
    if (scene) {
      const before = this.scene;
      if (scene.pending && before) {
        // Pipes of before are better than none while the new ones are worked out.
        scene = { ...scene, pipes: before.pipes, emitters: before.emitters, zones: before.zones, trench: before.trench, crossings: before.crossings };
      }
      this.scene = scene;
      this.tell('scene', { scene });
      if (scene.pending) {
        this.awaitPlan(scene.version);
      }
    }
  }

  async awaitPlan(version) {
    try {
      const scene = await this.api.get(`${this.base}/scene?wait=true`);
      if (scene.version >= version && this.scene.version === version && this.scene.pending) {
        this.take({ scene });
      }
    } catch (problem) {
      this.tell('planless', { problem });
    }
  }

  /** Asks what a change would do, without making it. */
  attempt(operations) {
    this.serial += 1;
    const question = { operations, asked: performance.now(), serial: this.serial, round: this.round };
    this.quick.ask(question);
    clearTimeout(this.costTimer);
    if (operations.every((one) => one.type === 'movePlant' && !one.offRow)) {
      this.slow.ask(question);
    } else {
      // Other changes need a whole plan, which is only asked for when the hand rests.
      this.costTimer = setTimeout(() => this.slow.ask({ ...question, asked: performance.now() }), 120);
    }
  }

  /** Stops asking. */
  endAttempt() {
    this.serial += 1;
    this.round += 1;
    clearTimeout(this.costTimer);
    this.quick.forget();
    this.slow.forget();
  }

  /** Makes a change. True if it was saved; otherwise an event has told why not. */
  async edit(label, operations) {
    this.endAttempt();
    const clientId = crypto.randomUUID?.() ?? `${Date.now()}-${Math.random()}`;
    return this.change(
      () => this.api.post(`${this.base}/edits`, { onVersion: this.state.version, label, operations, clientId }),
      { label, operations },
    );
  }

  undo() {
    return this.change(() => this.api.post(`${this.base}/undo`, { onVersion: this.state.version }));
  }

  redo() {
    return this.change(() => this.api.post(`${this.base}/redo`, { onVersion: this.state.version }));
  }

  async change(send, edit) {
    // Changes are made one after another, each on the version that the one before it left.
    const turn = (this.turn ?? Promise.resolve()).then(async () => {
      try {
        this.take(await send());
        return true;
      } catch (problem) {
        if (problem.code === 'stale') {
          this.tell('stale', { state: problem.body?.state, edit });
        } else {
          this.tell('refused', { problem, edit });
        }
        return false;
      }
    });
    this.turn = turn;
    return turn;
  }

  /** Takes the newest state from the server. */
  async reload() {
    const state = await this.api.get(this.base);
    const scene = await this.api.get(`${this.base}/scene`);
    this.take({ state, scene });
  }

  /** Whether somebody saved since this page was drawn. */
  async isStale() {
    const state = await this.api.get(this.base);
    return state.version !== this.state.version;
  }
}
