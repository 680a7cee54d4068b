import { buildSite } from './build-site';

process.exitCode = await buildSite();
