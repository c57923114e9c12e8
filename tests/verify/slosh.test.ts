import { sloshes } from '$src/verify/slosh';
import { grade } from './grade';

grade(sloshes);
