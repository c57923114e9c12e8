import { frames } from '$src/verify/frame';
import { grade } from './grade';

grade(frames);
