import { answerTo, type Asked } from '../editor/answer-to';

self.onmessage = ({ data }: MessageEvent<Asked>) => postMessage(answerTo(data));
