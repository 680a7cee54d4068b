import { useId } from 'react';
import { escapedText } from '@/lib/files/links/dive-page';
import { LinkBox } from '../LinkBox';
import { embedPath } from '../routes';

/** Room for two pictures beside each other, with readings and time, on a course page that is wide. */
const FRAME_HEIGHT_PX = 930;

/**
 * No higher than the window, so that readings, picture and the hand on time are seen together on a phone; and never so
 * low that nothing is, where a course puts its page into a frame of its own whose height is yet to be found.
 */
const FRAME_STYLE = `border:0;height:clamp(560px,92vh,${FRAME_HEIGHT_PX}px)`;

interface FrameLineProps {
  title: string;
  /** What the page carries behind its #. */
  fragment: string;
  /** What is in the frame, after "this line shows". */
  shows: string;
}

/** The line that shows a page of its own in a frame of another page. */
export function FrameLine({ title, fragment, shows }: FrameLineProps) {
  const id = useId();
  const address = `${location.origin}${embedPath}#${fragment}`;
  const line = `<iframe src="${address}" title="${escapedText(title)}" width="100%" height="${FRAME_HEIGHT_PX}" style="${FRAME_STYLE}" loading="lazy"></iframe>`;
  return (
    <>
      <LinkBox link={line} label="Line for a frame" describedBy={id} />
      <p id={id}>
        Put where a course page takes HTML, this line shows {shows}, as wide as the page and no higher than the window.
        It keeps nothing and asks for nothing but itself. Whether a frame may be shown, the course’s page decides; where
        it may not, give the link.
      </p>
    </>
  );
}
