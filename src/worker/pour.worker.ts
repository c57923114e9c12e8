import { expose } from 'comlink';
import { runFront } from '$src/core/pour/runPour';
import { simulate } from '$src/core/pour/simulate';
import { createPourApi } from './pourApi';

expose(createPourApi(simulate, runFront));
