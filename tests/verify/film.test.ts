import { films } from '$src/verify/film';
import { grade } from './grade';

grade(films);
