'use strict';
// Times the engine of the npm package epanet-js on the networks that NetworkBench wrote, to set
// beside its own table: node engine-times.cjs <directory>
const fs = require('fs');
const path = require('path');
const { Project, Workspace } = require('epanet-js');

async function main() {
  const directory = process.argv[2];
  const ws = new Workspace();
  await ws.loadModule();
  for (const size of [100, 1000, 10000, 100000]) {
    const project = new Project(ws);
    ws.writeFile('net.inp', fs.readFileSync(path.join(directory, `looped-${size}.inp`), 'utf8'));
    const start = process.hrtime.bigint();
    project.open('net.inp', 'net.rpt', 'net.out');
    const opened = process.hrtime.bigint();
    project.openH();
    const times = [];
    for (let round = 0; round < Math.max(3, Math.min(200, 200000 / size)); round++) {
      // 10: flows are set back, so that every solve starts alike
      project.initH(10);
      const before = process.hrtime.bigint();
      project.runH();
      times.push(Number(process.hrtime.bigint() - before) / 1e6);
    }
    times.sort((a, b) => a - b);
    const read = Number(opened - start) / 1e6;
    const solve = times[Math.floor(times.length / 2)];
    const steps = project.getStatistic(0);
    const change = project.getStatistic(1).toExponential(1);
    project.closeH();
    const whole = [];
    for (let round = 0; round < Math.max(5, Math.min(100, 100000 / size)); round++) {
      const before = process.hrtime.bigint();
      project.openH();
      project.initH(10);
      project.runH();
      whole.push(Number(process.hrtime.bigint() - before) / 1e6);
      project.closeH();
    }
    whole.sort((a, b) => a - b);
    const both = whole[Math.floor(whole.length / 2)];
    console.log(`${size} emitters: read ${read.toFixed(1)} ms, solve ${solve.toFixed(3)} ms, ` +
      `both ${both.toFixed(3)} ms, ${steps} steps, relative change ${change}`);
    project.close();
  }
}

main();
