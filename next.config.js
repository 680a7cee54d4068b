/** The app is a folder of static files: no server of ours ever sees a dive. */
const config = {
  output: 'export',
  trailingSlash: true,
  images: { unoptimized: true },
  reactStrictMode: true,
  // One import of D3 would bring all its parts that touch the page, though nothing here uses them.
  experimental: { optimizePackageImports: ['d3'] },
  // Types are a step of `npm test`; opening the site should not wait for them.
  typescript: { ignoreBuildErrors: true },
};

export default config;
