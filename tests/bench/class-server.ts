import { classHandler } from '@/app/commands/class/class-handler';
import { serveSite } from '@/app/commands/serve/serve-site';

/** The server of a class and nothing else, for the bench to ask: says its address and waits. */
const site = await serveSite(process.argv[2]!, 0, { handlers: [classHandler()] });
console.log(site.address.replace('localhost', '127.0.0.1'));
