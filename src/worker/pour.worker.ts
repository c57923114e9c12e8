import { expose } from 'comlink';
import { simulate } from '$src/core/pour/simulate';
import { createPourApi } from './pourApi';

expose(createPourApi(simulate));
