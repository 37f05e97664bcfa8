'use strict';
// Makes random networks, solves each with an independent engine and writes both as text.
// See README.md. Usage: node generate.cjs <directory to write to>
const fs = require('fs');
const path = require('path');
const zlib = require('zlib');
const { Project, Workspace } = require('epanet-js');

const COUNT = 240;

// A small generator of random numbers, so that every run makes the same networks.
function random(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

// Flow units of the file: m3/s per unit, and whether lengths are in feet and inches.
const UNITS = [
  ['LPS', 1e-3, false],
  ['LPM', 1e-3 / 60, false],
  ['CMH', 1 / 3600, false],
  ['GPM', 3.785411784e-3 / 60, true],
  ['CFS', Math.pow(0.3048, 3), true],
];
const SHAPES = ['tree', 'lateral', 'loop', 'loops', 'grid', 'mesh'];

function shape(kind, size, pick) {
  const edges = [];
  const join = (a, b) => edges.push([a, b]);
  if (kind === 'tree') {
    for (let i = 1; i < size; i++) join(Math.max(0, i - 1 - Math.floor(pick() * 8)), i);
  } else if (kind === 'lateral') {
    const laterals = Math.max(1, Math.round(Math.sqrt(size / 4)));
    let next = laterals;
    for (let i = 1; i < laterals; i++) join(i - 1, i);
    for (let l = 0; l < laterals; l++) {
      const end = l === laterals - 1 ? size : next + Math.floor((size - laterals) / laterals);
      let before = l;
      while (next < end) {
        join(before, next);
        before = next++;
      }
    }
  } else if (kind === 'loop') {
    for (let i = 1; i < size; i++) join(i - 1, i);
    join(size - 1, Math.floor(size / 5));
  } else if (kind === 'loops') {
    const loops = Math.max(1, Math.floor(size / 25));
    let next = loops;
    for (let i = 1; i < loops; i++) join(i - 1, i);
    for (let l = 0; l < loops; l++) {
      const end = l === loops - 1 ? size : next + Math.floor((size - loops) / loops);
      let before = l;
      while (next < end) {
        join(before, next);
        before = next++;
      }
      if (before !== l) join(before, l);
    }
  } else if (kind === 'grid') {
    const wide = Math.max(2, Math.round(Math.sqrt(size)));
    for (let i = 1; i < size; i++) {
      if (i % wide !== 0) join(i - 1, i);
      if (i >= wide) join(i - wide, i);
    }
    if (size <= wide) for (let i = 1; i < size; i++) if (i % wide === 0) join(i - 1, i);
  } else {
    for (let i = 1; i < size; i++) join(Math.max(0, i - 1 - Math.floor(pick() * 4)), i);
    for (let i = 0; i < size / 3; i++) {
      const a = Math.floor(pick() * size);
      const b = Math.min(size - 1, Math.floor(a + pick() * 30));
      if (a !== b) join(a, b);
    }
  }
  return edges;
}

function network(number, attempt) {
  const pick = random(1000003 * number + attempt);
  const between = (low, high) => low + (high - low) * pick();
  const units = UNITS[number % UNITS.length];
  const [unit, perUnit, us] = units;
  const length = (m) => (us ? m / 0.3048 : m);
  const bore = (m) => (us ? m / 0.0254 : m * 1000);
  const flow = (m3s) => m3s / perUnit;
  const psi = (m) => (us ? (m / 0.3048) * 0.4333 : m);
  const dw = number % 2 === 1;
  const kind = SHAPES[Math.floor(number / 2) % SHAPES.length];
  const size = Math.round(10 * Math.pow(200, Math.pow(pick(), 1.6)));
  const exponent = [0.5, 0.5, 0.4, 0.6, 0.75, 1.0][Math.floor(pick() * 6)];
  const slope = between(0, 0.04);
  const edges = shape(kind, size, pick);
  const big = between(1.5, 3);
  const feed = ['reservoir', 'tank', 'pump1', 'pump3'][Math.floor(pick() * 4)];
  const regulated = pick() < 0.35;
  const checks = pick() < 0.3;
  const second = !regulated && pick() < 0.35;

  const out = { JUNCTIONS: [], RESERVOIRS: [], TANKS: [], PIPES: [], PUMPS: [], VALVES: [] };
  out.EMITTERS = [];
  out.CURVES = [];
  out.STATUS = [];
  const rough = () =>
    dw ? (us ? between(0, 0.3) : between(0, 0.1)) : Math.round(between(120, 152));
  const g = (x) => Number(x.toPrecision(7));
  // total outflow decides the bores so that pressures stay reasonable
  const emitting = new Array(size).fill(false).map((_, i) => i > 0 && pick() < 0.8);
  const share = new Array(size).fill(0);
  let total = 0;
  for (let i = 0; i < size; i++) {
    if (emitting[i]) share[i] = (between(1, 9) * 1e-3) / 3600;
    total += share[i];
  }
  const height = (i) => 3 + slope * 2 * (i % 37) - slope * 0.3 * (i % 11);
  for (let i = 0; i < size; i++) {
    let demand = 0;
    if (!emitting[i] && i > 0 && pick() < 0.4) {
      demand = (between(1, 6) * 1e-3) / 3600;
      total += demand;
    }
    out.JUNCTIONS.push(`n${i} ${g(length(height(i)))} ${g(flow(demand))}`);
    if (emitting[i]) {
      const k = flow(share[i]) / Math.pow(psi(10), exponent);
      out.EMITTERS.push(`n${i} ${g(k)}`);
    }
  }
  const depth = downstream(size, edges, share);
  edges.forEach(([a, b], e) => {
    const q = Math.max(depth[e], 2e-6);
    const d = big * Math.max(0.009, Math.sqrt((4 * q) / (Math.PI * 1.2)));
    const k = pick() < 0.3 ? g(between(0, 4)) : 0;
    // only where both ends give water, or the head between two shut valves would be anyone's guess
    const check = checks && emitting[a] && emitting[b] && pick() < 0.05 ? 'CV' : 'Open';
    out.PIPES.push(
      `p${e} n${a} n${b} ${g(length(between(0.3, 12)))} ${g(bore(d))} ${g(rough())} ${k} ${check}`);
  });
  const mainBore = Math.max(0.02, 2 * Math.sqrt((4 * total) / Math.PI));
  const head = between(14, 40) + attempt * 12;
  let entry = 'n0';
  if (regulated) {
    entry = 'in';
    out.JUNCTIONS.push(`in ${g(length(2))} 0`);
    out.VALVES.push(`v1 in n0 ${g(bore(mainBore))} PRV ${g(psi(between(9, 18) + attempt * 5))} ` +
      g(between(0, 5)));
  }
  if (feed === 'reservoir') {
    out.RESERVOIRS.push(`src ${g(length(head))}`);
  } else if (feed === 'tank') {
    out.TANKS.push(`src ${g(length(head - 2))} ${g(length(2))} 0 ${g(length(4))} ${g(length(50))} 0`);
  } else {
    out.RESERVOIRS.push(`src ${g(length(0.5))}`);
    out.JUNCTIONS.push(`lift ${g(length(1))} 0`);
    out.PUMPS.push('pump src lift HEAD c1');
    if (feed === 'pump1') {
      out.CURVES.push(`c1 ${g(flow(total * 1.3))} ${g(length(head))}`);
    } else {
      out.CURVES.push(`c1 0 ${g(length(head * 1.25))}`);
      out.CURVES.push(`c1 ${g(flow(total))} ${g(length(head))}`);
      out.CURVES.push(`c1 ${g(flow(total * 2))} ${g(length(head * 0.4))}`);
    }
  }
  const start = feed.startsWith('pump') ? 'lift' : 'src';
  out.PIPES.push(
    `main ${start} ${entry} ${g(length(between(5, 60)))} ${g(bore(mainBore))} ${g(rough())} 0 Open`);
  if (second) {
    const at = Math.floor(between(size / 2, size));
    out.RESERVOIRS.push(`src2 ${g(length(head * between(0.8, 1.05)))}`);
    out.PIPES.push(
      `main2 src2 n${at} ${g(length(between(5, 60)))} ${g(bore(0.03))} ${g(rough())} 1 ` +
        (pick() < 0.5 ? 'CV' : 'Open'));
  }
  const options = [
    `Units ${unit}`,
    `Headloss ${dw ? 'D-W' : 'H-W'}`,
    `Viscosity ${g(between(0.8, 1.4))}`,
    `Emitter Exponent ${exponent}`,
    'Trials 500',
    'Accuracy 0.00000001',
    'Unbalanced Stop',
  ];
  let text = '';
  for (const [section, lines] of Object.entries(out)) {
    if (lines.length) text += `[${section}]\n${lines.join('\n')}\n\n`;
  }
  text += `[OPTIONS]\n${options.join('\n')}\n\n[TIMES]\nDuration 0\n\n[END]\n`;
  return { text, perUnit, size, kind, feed, regulated, checks, second, unit, dw, exponent };
}

// Flow that each edge would carry were the network a tree of shortest ways.
function downstream(size, edges, share) {
  const at = Array.from({ length: size }, () => []);
  edges.forEach(([a, b], e) => {
    at[a].push([b, e]);
    at[b].push([a, e]);
  });
  const via = new Array(size).fill(-1);
  const from = new Array(size).fill(-1);
  const order = [0];
  const seen = new Set([0]);
  for (let i = 0; i < order.length; i++) {
    for (const [b, e] of at[order[i]]) {
      if (!seen.has(b)) {
        seen.add(b);
        via[b] = e;
        from[b] = order[i];
        order.push(b);
      }
    }
  }
  if (order.length !== size) throw new Error('not connected');
  const need = share.slice();
  const result = new Array(edges.length).fill(0);
  for (let i = order.length - 1; i > 0; i--) {
    const n = order[i];
    result[via[n]] = need[n];
    need[from[n]] += need[n];
  }
  return result;
}

// Largest imbalance of flow at any junction and largest error of any emitter's law, as a share.
function ownErrors(project, exponent) {
  const balance = [0];
  let law = 0;
  for (let i = 1; i <= project.getCount(0); i++) {
    const out = project.getNodeValue(i, 9);
    const k = project.getNodeValue(i, 3);
    balance.push(-out);
    if (k > 0) {
      const expected = k * Math.pow(project.getNodeValue(i, 11), exponent);
      law = Math.max(law, Math.abs(out / expected - 1));
    }
  }
  for (let i = 1; i <= project.getCount(2); i++) {
    const { node1, node2 } = project.getLinkNodes(i);
    const q = project.getLinkValue(i, 8);
    balance[node1] -= q;
    balance[node2] += q;
  }
  let mass = 0;
  for (let i = 1; i <= project.getCount(0); i++) {
    if (project.getNodeType(i) === 0) mass = Math.max(mass, Math.abs(balance[i]));
  }
  return { mass, law };
}

function solve(ws, text, perUnit, exponent) {
  const project = new Project(ws);
  ws.writeFile('net.inp', text);
  project.open('net.inp', 'net.rpt', 'net.out');
  try {
    project.openH();
    project.initH(0);
    project.runH();
    // statistics 1 and 3: relative change of flow, and the largest change of any one flow
    if (!(project.getStatistic(1) < 1e-7)) throw new Error('not balanced');
    const own = ownErrors(project, exponent);
    // 1e-4 l/h, and one in a million: far less than the differences that are looked for
    if (own.mass * perUnit > 1e-7 / 3600 || own.law > 1e-6) throw new Error('not exact');
    const nodes = [];
    const links = [];
    const emitting = new Set();
    for (const line of text.split('[EMITTERS]\n')[1]?.split('\n\n')[0].split('\n') ?? []) {
      emitting.add(line.split(' ')[0]);
    }
    let least = Infinity;
    for (let i = 1; i <= project.getCount(0); i++) {
      const id = project.getNodeId(i);
      const pressure = project.getNodeValue(i, 11);
      if (emitting.has(id)) least = Math.min(least, pressure);
      nodes.push([id, project.getNodeValue(i, 10), project.getNodeValue(i, 9)]);
    }
    for (let i = 1; i <= project.getCount(2); i++) {
      const q = project.getLinkValue(i, 8);
      // type 0 is a pipe with a check valve; the engine lets up to 1e-4 cfs back through it
      if (project.getLinkType(i) === 0 && q < 0) throw new Error('reverse flow');
      links.push([project.getLinkId(i), q]);
    }
    return { nodes, links, least };
  } finally {
    project.close();
  }
}

async function main() {
  const into = process.argv[2];
  const ws = new Workspace();
  if (ws.loadModule) await ws.loadModule();
  fs.mkdirSync(into, { recursive: true });
  let inputs = '';
  let results = '';
  const counts = {};
  let made = 0;
  let skipped = 0;
  for (let number = 0; made < COUNT; number++) {
    for (let attempt = 0; attempt < 6; attempt++) {
      const it = network(number, attempt);
      let answer;
      try {
        answer = solve(ws, it.text, it.perUnit, it.exponent);
      } catch (error) {
        skipped++;
        continue; // unbalanced or with negative pressures: not fit to compare with
      }
      // emitters of the engine draw water in at negative pressure; ours do not
      if (!(answer.least > 0.5)) {
        skipped++;
        continue;
      }
      const id = String(made++).padStart(3, '0');
      inputs += `;; network ${id}\n${it.text}`;
      results += `network ${id}\n`;
      for (const [n, h, d] of answer.nodes) {
        results += `n ${n} ${Number(h.toPrecision(9))} ${Number(d.toPrecision(7))}\n`;
      }
      for (const [l, q] of answer.links) results += `l ${l} ${Number(q.toPrecision(8))}\n`;
      for (const key of [it.kind, it.feed, it.unit, it.dw ? 'D-W' : 'H-W',
        'x' + it.exponent, it.regulated && 'regulator', it.checks && 'check valves',
        it.second && 'two sources']) {
        if (key) counts[key] = (counts[key] || 0) + 1;
      }
      counts.nodes = (counts.nodes || 0) + answer.nodes.length;
      break;
    }
  }
  const gzip = (name, text) =>
    fs.writeFileSync(path.join(into, name), zlib.gzipSync(text, { level: 9 }));
  gzip('networks.inp.gz', inputs);
  gzip('results.txt.gz', results);
  console.log(JSON.stringify(counts, null, 1), 'engine', ws.version, skipped, 'tries not fit to compare with');
}

main();
