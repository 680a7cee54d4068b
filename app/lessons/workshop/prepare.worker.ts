import { prepareText, type Unprepared } from './prepare-text';

self.onmessage = ({ data }: MessageEvent<Unprepared>) => postMessage(prepareText(data));
