import { buildSite } from './build-site';

process.exitCode = buildSite();
