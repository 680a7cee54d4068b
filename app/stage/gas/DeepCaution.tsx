import { useContext } from 'react';
import type { PictureId } from '../../pictures/picture-ids';
import { Caution } from '../../parts/Caution';
import { RoomContext } from '../figures/room';

const SAID_BY: readonly PictureId[] = ['oxygen', 'supply', 'staged', 'helium'];

/** What a deep dive asks for, once for all pictures of gas that are in sight: under the first of them. The others have it for whoever saves them alone. */
export function DeepCaution({ under }: { under: PictureId }) {
  const first = useContext(RoomContext)?.inSight.find((id) => SAID_BY.includes(id));
  return <Caution about="deepCourse" hidden={first !== undefined && first !== under} />;
}
