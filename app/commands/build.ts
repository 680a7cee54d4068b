import { buildSite } from './site/build-site';

process.exitCode = await buildSite();
