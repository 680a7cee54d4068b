import { expose } from 'comlink';
import { BringSession } from './bring-session';

expose(new BringSession());
