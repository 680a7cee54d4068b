import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Metadata } from 'next';
import { allowedAtBuild, allowedLicences } from '@/content/licences';
import { AsBuilt } from '../parts/AsBuilt';
import { layDown } from '../parts/as-built';
import { DataTable } from '../parts/DataTable';
import { Disclosure } from '../parts/Disclosure';
import { Page } from '../parts/Page';
import { routes } from '../parts/routes';
import { installedPackages, type InstalledPackage } from './installed-packages';
import styles from './licences.module.css';

export const metadata: Metadata = { title: routes.licences.name, description: routes.licences.summary };

/** Read from the lock file and the installed packages when the site is built. */
export default function LicencesPage() {
  const packages = installedPackages();
  const shipped = packages.filter(({ inPages }) => inPages);
  const atBuild = packages.filter(({ inPages }) => !inPages);
  return (
    <Page
      title="Licences"
      lead="What this app is made with, in which version, and under which terms. The list is read from the installed packages each time the site is built."
    >
      <section aria-labelledby="own" className={styles.section}>
        <h2 id="own">Halftime itself</h2>
        <p>{ownStanding()}</p>
        <p>
          Formulas and constants are published science; where each comes from is told on the pages Model and Evidence.
        </p>
      </section>

      <section aria-labelledby="shipped" className={styles.section}>
        <h2 id="shipped">In the pages you open</h2>
        <p>
          {shipped.length} packages, of which your browser gets all or a part. The three fonts are under the Open Font
          Licence. The page builder also carries core-js (MIT), which only older browsers fetch.
        </p>
        <PackageTable caption="Packages in the pages" packages={shipped} />
        <h3>Their licences in full</h3>
        <AsBuilt name={layDown('licence-texts', <Texts packages={shipped} />)} />
        <p>
          No text comes with{' '}
          {shipped
            .filter(({ text }) => text === undefined)
            .map(({ name }) => name)
            .join(', ')}
          : each names its licence in its own description, and that name is what the table gives.
        </p>
      </section>

      <section aria-labelledby="build" className={styles.section}>
        <h2 id="build">Only where the site is built or served</h2>
        <p>
          {atBuild.length} packages, some of them the same tool for other kinds of machine. Nothing of them is in a
          page; whoever installs the project gets them with their own licences.
        </p>
        <Disclosure summary="The list">
          <AsBuilt
            name={layDown(
              'build-packages',
              <PackageTable caption="Packages that build or serve the site" packages={atBuild} />,
            )}
          />
        </Disclosure>
      </section>

      <section aria-labelledby="allowed" className={styles.section}>
        <h2 id="allowed">Which licences are let in, and why</h2>
        <dl className={styles.allowed}>
          {[...allowedLicences, ...allowedAtBuild].map(({ licence, because }) => (
            <div key={licence}>
              <dt>{licence}</dt>
              <dd>{because}</dd>
            </div>
          ))}
        </dl>
      </section>
    </Page>
  );
}

function Texts({ packages }: { packages: readonly InstalledPackage[] }) {
  return (
    <div className={styles.texts}>
      {byText(packages).map(({ names, text }) => (
        <Disclosure key={names.join()} summary={names.join(', ')}>
          <pre className={styles.text}>{text}</pre>
        </Disclosure>
      ))}
    </div>
  );
}

function PackageTable({ caption, packages }: { caption: string; packages: readonly InstalledPackage[] }) {
  return (
    <DataTable
      caption={caption}
      columns={[
        { heading: 'Package', cell: ({ name }: InstalledPackage) => name },
        { heading: 'Version', cell: ({ version }: InstalledPackage) => version },
        { heading: 'Licence', cell: ({ licence }: InstalledPackage) => licence },
      ]}
      rows={packages}
    />
  );
}

/** Packages that carry the same words are named above them together. */
function byText(packages: readonly InstalledPackage[]): { names: string[]; text: string }[] {
  const groups = new Map<string, { names: string[]; text: string }>();
  for (const { name, text } of packages) {
    if (text === undefined) continue;
    const group = groups.get(text.replace(/\s+/g, ' ')) ?? { names: [], text };
    group.names.push(name);
    groups.set(text.replace(/\s+/g, ' '), group);
  }
  return [...groups.values()];
}

/** What the project's own files say of it, and no more. */
function ownStanding(): string {
  const manifest = JSON.parse(readFileSync(join(process.cwd(), 'package.json'), 'utf8')) as {
    private?: boolean;
    license?: string;
  };
  const file = ['LICENSE', 'LICENCE', 'LICENSE.md', 'LICENCE.md'].find((name) => existsSync(join(process.cwd(), name)));
  if (file !== undefined) return `The project’s own terms are in the file ${file} of its repository.`;
  if (manifest.license !== undefined) return `The project’s own description names the licence ${manifest.license}.`;
  return 'The project grants no licence of its own: its repository holds no licence file, and its package is marked private. Ask whoever gave it to you before you pass it on.';
}
