import { parentPort } from 'node:worker_threads';
import { expose } from 'comlink';
import nodeEndpoint from 'comlink/dist/esm/node-adapter';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { simulate } from '$src/core/pour/simulate';

/** What a worker of the command line answers to. */
export interface PourWorker {
  run(plan: PourPlan): PourRecord;
}

const pourWorker: PourWorker = {
  run(plan) {
    const pour = simulate(plan);
    let step = pour.next();
    while (!step.done) step = pour.next();
    return step.value;
  },
};

if (!parentPort) throw new Error('The pour worker runs in a worker thread only.');
expose(pourWorker, nodeEndpoint(parentPort));
