import { readFileSync } from 'node:fs';
import { printFault, type LessonFault } from '@/lib/lesson/checking/fault';
import type { Lesson } from '@/lib/lesson/lesson';
import { readLesson, readShape } from '@/lib/lesson/read-lesson';
import { knownNames } from '../stage/known-names';
import { lessonPath } from '../parts/lesson-paths';
import { prepareLesson } from './prepare-lesson';
import type { PreparedLesson } from './prepared';
import { lessonFiles, readGlossary } from './read-content';

/** A shipped lesson as it stands in its file. */
export interface ShippedLesson {
  readonly slug: string;
  readonly text: string;
  readonly lesson: Lesson;
}

const told = (slug: string, faults: readonly LessonFault[]): string =>
  faults.map((fault) => printFault(`content/lessons/${slug}.yaml`, fault)).join('\n');

/** Reads one shipped lesson; that it has no shape stops the build and says where. */
function loadFile({ slug, path }: ReturnType<typeof lessonFiles>[number]): ShippedLesson {
  const text = readFileSync(path, 'utf8');
  const read = readShape(text);
  if (read.ok) return { slug, text, lesson: read.lesson };
  throw new Error(told(slug, read.faults));
}

/** What is wrong in shipped lessons, one line each: asked once for a build, and not by each of its pages. */
export function faultsOfShipped(): readonly string[] {
  const known = knownNames(readGlossary());
  return lessonFiles().flatMap(({ slug, path }) => {
    const read = readLesson(readFileSync(path, 'utf8'), { known });
    return read.ok ? [] : [told(slug, read.faults)];
  });
}

const loaded = new Map<string, ShippedLesson>();

/** A shipped lesson by its slug. Only for pages made at build time. */
export function loadLesson(slug: string): ShippedLesson {
  const before = loaded.get(slug);
  if (before) return before;
  const file = lessonFiles().find((one) => one.slug === slug);
  if (!file) throw new Error(`there is no lesson ${slug}`);
  const fresh = loadFile(file);
  loaded.set(slug, fresh);
  return fresh;
}

/** All shipped lessons in order. */
export function loadLessons(): readonly ShippedLesson[] {
  return lessonFiles().map(({ slug }) => loadLesson(slug));
}

/** What a page or file of one lesson is given. */
export interface LessonAddress {
  params: Promise<{ slug: string }>;
}

/** The addresses to be built. */
export function lessonParams() {
  return lessonSlugs().map((slug) => ({ slug }));
}

/** The same for a class, which has one dive, in metres, however its phones show it. */
export function loadForClass(slug: string): PreparedLesson {
  return prepareLesson({ ...loadLesson(slug).lesson, inFeet: undefined }, slug, shippedPaths);
}

export function lessonSlugs(): string[] {
  return lessonFiles().map(({ slug }) => slug);
}

/** Where the shipped lessons are, by number. A file is named after its number, so that none has to be read for this. */
export function shippedPaths(number: number): string | undefined {
  const slug = lessonSlugs().find((one) => Number(one.slice(0, 2)) === number);
  return slug === undefined ? undefined : lessonPath(slug);
}

const prepared = new Map<string, PreparedLesson>();

/** A shipped lesson ready for the screen. */
export function loadPrepared(slug: string): PreparedLesson {
  const before = prepared.get(slug);
  if (before) return before;
  const fresh = prepareLesson(loadLesson(slug).lesson, slug, shippedPaths);
  prepared.set(slug, fresh);
  return fresh;
}
