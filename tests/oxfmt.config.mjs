import packageJson from '../package.json' with { type: 'json' };

/** How every file is laid out: as `prettier` in package.json says, which editors read too. */
const layout = { ...packageJson.prettier, sortPackageJson: false };

export default layout;
