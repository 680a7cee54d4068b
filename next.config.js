import { existsSync } from 'node:fs';

/** The app is a folder of static files: no server of ours ever sees a dive. */
const config = {
  output: 'export',
  trailingSlash: true,
  images: { unoptimized: true },
  reactStrictMode: true,
  experimental: {
    // One import of D3 would bring all its parts that touch the page, though nothing here uses them.
    optimizePackageImports: ['d3'],
    // A folder's first build is often its only one: what it would keep for the next takes it a quarter longer.
    turbopackFileSystemCacheForBuild: existsSync(new URL('.next', import.meta.url)),
    // Bytes of source. All of the site is fetched to be kept, so code that many screens share is better a file of its own
    // than merged into each screen's; smaller still would save more, at twice the requests for the desk.
    turbopackChunking: { maxMergeChunkSize: 32_000 },
  },
  // Types are a step of `npm test`; opening the site should not wait for them.
  typescript: { ignoreBuildErrors: true },
};

export default config;
