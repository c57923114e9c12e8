import { stands } from '$src/verify/stand';
import { grade } from './grade';

grade(stands);
