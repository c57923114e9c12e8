import { steadyStreams } from '$src/verify/steady';
import { grade } from './grade';

grade(steadyStreams);
