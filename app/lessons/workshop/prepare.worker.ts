import { answerTo, type Asked } from './answer-to';

self.onmessage = ({ data }: MessageEvent<Asked>) => postMessage(answerTo(data));
