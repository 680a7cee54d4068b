/** What a phone in a class fetches once it is asked something, or has a dive to follow: in one piece, as the two share much. */
export { PhoneFollow } from './PhoneFollow';
export { PhoneQuestion } from './PhoneQuestion';
