/** A lesson in the making as others will have it: fetched in one piece, since all of it needs the player. */
export { LookBeside } from './LookBeside';
export { OwnPaper } from './OwnPaper';
export { TryOut } from './TryOut';
