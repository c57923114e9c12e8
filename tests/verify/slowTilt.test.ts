import { slowTilt } from '$src/verify/slowTilt';
import { grade } from './grade';

grade(slowTilt);
