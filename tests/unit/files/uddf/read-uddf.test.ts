import { describe, expect, it } from 'vitest';
import { checkRecord } from '@/lib/files/records/check-record';
import { readUddf } from '@/lib/files/uddf/read-uddf';
import type { FileRead } from '@/lib/files/records/record';
import { intervalsAtOdds, surfaceIntervals } from '@/lib/files/records/surface-intervals';
import { piecesOf } from '../made-recordings';

/** Structure, elements and units as the standard's pages describe them (UDDF 3.2); the dives are invented. */
function file(dives: string, more = ''): string {
  return `<?xml version="1.0" encoding="utf-8"?>
<uddf version="3.2.2">
  <generator><name>test</name></generator>
  ${more}
  <profiledata><repetitiongroup id="g">${dives}</repetitiongroup></profiledata>
</uddf>`;
}

const waypoint = (divetime: string, depth: string, more = '') =>
  `<waypoint><depth>${depth}</depth><divetime>${divetime}</divetime>${more}</waypoint>`;
const dive = (waypoints: string, before = '') =>
  `<dive id="d"><informationbeforedive>${before}</informationbeforedive><samples>${waypoints}</samples></dive>`;
const gases = `<gasdefinitions>
  <mix id="back"><name>18/45</name><o2>0.18</o2><n2>0.37</n2><he>0.45</he><ar>0.0</ar><h2>0.0</h2></mix>
  <mix id="deco"><name>50</name><o2>0.5</o2><n2>0.5</n2></mix>
  <mix id="wrong"><name>32</name><o2>32</o2></mix>
  <mix id="hydrox"><name>h</name><o2>0.04</o2><h2>0.96</h2></mix>
</gasdefinitions>`;

async function read(text: string): Promise<FileRead> {
  const result = await readUddf(piecesOf(text, 13));
  if (!result.ok) throw new Error(result.what);
  return result;
}

const plain = dive(waypoint('0', '0.0') + waypoint('240.0', '20.0') + waypoint('1560.0', '0'));

describe('reading a UDDF file', () => {
  it('reads the standard’s own example of a descent: 20 m at 240 s, which is 5 m/min', async () => {
    const { recordings } = await read(file(plain));
    expect([...recordings[0]!.timeS]).toEqual([0, 240, 1560]);
    expect([...recordings[0]!.depthM]).toEqual([0, 20, 0]);
    expect(checkRecord(recordings[0]!).findings).toEqual([]);
  });

  it('takes the gas a dive itself is linked to, and mixes that are defined after the dives', async () => {
    const linked = await read(file(dive(waypoint('0', '0') + waypoint('60', '9'), '<link ref="deco"/>'), gases));
    expect(linked.recordings[0]!.switches).toEqual([{ timeS: 0, gas: { o2: 0.5, he: 0 } }]);
    const after = file(dive(waypoint('0', '0', '<switchmix ref="deco"/>') + waypoint('60', '9')));
    const { recordings } = await read(after.replace('</profiledata>', `</profiledata>${gases}`));
    expect(recordings[0]!.switches).toEqual([{ timeS: 0, gas: { o2: 0.5, he: 0 } }]);
  });

  it('leaves out a dive whose gas cannot be used and reads the others, and says so', async () => {
    const broken = dive(waypoint('0', '0', '<switchmix ref="wrong"/>') + waypoint('60', '9'));
    const { recordings, notes } = await read(file(broken + plain, gases));
    expect(recordings.map(({ name }) => name)).toEqual(['Dive 2']);
    expect(notes).toEqual([
      'Dive 1 was left out: The mix “wrong” cannot be used: its o2 is 32, and a fraction is at most 1.',
    ]);
  });

  it('passes over temperatures no water has and an altitude beyond all, and says so', async () => {
    const { recordings, notes } = await read(
      file(
        dive(waypoint('0', '0', '<temperature>18</temperature>') + waypoint('60', '9'), '<altitude>12000</altitude>'),
      ),
    );
    expect([recordings[0]!.temperatureC, recordings[0]!.altitudeM]).toEqual([undefined, undefined]);
    expect(notes).toEqual([
      'Dive 1 tells of 18 K, which no water has: such temperatures were passed over.',
      'Dive 1 tells of an altitude of 12000 m, beyond what is reckoned with: it was passed over.',
    ]);
  });

  it('says where an interval and the times of the dives are at odds, and takes no date with strokes for one', async () => {
    const at = (datetime: string, more = '') =>
      dive(
        waypoint('0', '0') + waypoint('600', '9') + waypoint('1200', '0'),
        `<datetime>${datetime}</datetime>${more}`,
      );
    const interval = '<surfaceintervalbeforedive><passedtime>600</passedtime></surfaceintervalbeforedive>';
    const odd = await read(file(at('2024-05-01T10:00:00') + at('2024-05-01T12:00:00', interval)));
    expect(intervalsAtOdds(odd.recordings)).toEqual([
      'The file says 10 min at the surface before “Dive 2”, and the times of its dives say 1 h 40 min: 10 min is taken.',
    ]);
    const strokes = await read(file(at('05/01/2024 10:00') + at('05/02/2024 10:00')));
    expect(surfaceIntervals(strokes.recordings)).toEqual([0, undefined]);
  });

  it('passes over an altitude of a site that stands where no site belongs', async () => {
    const { recordings } = await read(
      file(plain, '<site id="lost"><geography><altitude>1200</altitude></geography><density>1030</density></site>'),
    );
    expect(recordings).toHaveLength(1);
    expect(recordings[0]!.altitudeM).toBeUndefined();
  });

  it('reads it with and without the namespace, with prefixes, CDATA and remarks', async () => {
    const expected = (await read(file(plain))).recordings;
    const spaced = file(plain).replace('<uddf ', '<uddf xmlns="http://www.streit.cc/uddf/3.2/" ');
    expect((await read(spaced)).recordings).toEqual(expected);
    const prefixed = file(plain)
      .replace(/<(\/?)(\w+)(?=[ >])/g, '<$1u:$2')
      .replace('<u:uddf ', '<u:uddf xmlns:u="x" ');
    expect((await read(prefixed)).recordings).toEqual(expected);
    expect((await read(file(plain.replace('20.0', '<![CDATA[20.0]]><!-- deep -->')))).recordings).toEqual(expected);
  });

  it('means air where the first waypoint names no mix, and switches where one does', async () => {
    const { recordings } = await read(
      file(
        plain +
          dive(
            waypoint('0', '0', '<switchmix ref="back"/>') +
              waypoint('600', '21', '<switchmix ref="deco"/>') +
              waypoint('900', '0'),
          ),
        gases,
      ),
    );
    expect(recordings[0]!.switches).toEqual([{ timeS: 0, gas: { o2: 0.21, he: 0 } }]);
    expect(recordings[1]!.switches).toEqual([
      { timeS: 0, gas: { o2: 0.18, he: 0.45 } },
      { timeS: 600, gas: { o2: 0.5, he: 0 } },
    ]);
  });

  it('reads kelvin, the no-stop time, and of the stops the deepest required one', async () => {
    const more =
      '<temperature>291.2</temperature><nodecotime>1200</nodecotime><decostop kind="safety" decodepth="5.0" duration="180.0"/><decostop kind="mandatory" decodepth="3.0" duration="60"/><decostop kind="mandatory" decodepth="6.0" duration="120.0"/>';
    const { recordings } = await read(file(dive(waypoint('0', '0') + waypoint('60', '18', more))));
    expect([...recordings[0]!.temperatureC!]).toEqual([NaN, 18.05]);
    expect([...recordings[0]!.unit.noStopS!]).toEqual([NaN, 1200]);
    expect([...recordings[0]!.unit.stopDepthM!]).toEqual([NaN, 6]);
    expect([...recordings[0]!.unit.stopTimeS!]).toEqual([NaN, 120]);
  });

  it('reads when a dive began, the interval before it, and its site', async () => {
    const site =
      '<divesite><site id="lake"><name>x</name><geography><altitude>700.0</altitude></geography><sitedata><density>1000.0</density></sitedata></site></divesite>';
    const before = '<link ref="lake"/><datetime>2026-05-01T10:00:00</datetime>';
    const after = '<surfaceintervalbeforedive><passedtime>5400.0</passedtime></surfaceintervalbeforedive>';
    const fresh = '<surfaceintervalbeforedive><infinity/></surfaceintervalbeforedive>';
    const body = waypoint('0', '0') + waypoint('60', '5') + waypoint('99', '0');
    const { recordings } = await read(file(dive(body, before) + dive(body, after) + dive(body, fresh), site));
    expect(recordings[0]).toMatchObject({
      startedAt: '2026-05-01T10:00:00',
      altitudeM: 700,
      water: 'fresh',
      intervalBeforeS: undefined,
    });
    expect(recordings.slice(1).map(({ intervalBeforeS }) => intervalBeforeS)).toEqual([5400, Infinity]);
  });

  it('keeps a waypoint it cannot read and lists it by its number', async () => {
    const { recordings } = await read(
      file(
        dive(
          waypoint('0', '0') + waypoint('3.0.1', '5') + '<waypoint><depth>7,5</depth></waypoint>' + waypoint('99', '0'),
        ),
      ),
    );
    expect([...recordings[0]!.timeS]).toEqual([0, NaN, NaN, 99]);
    expect(checkRecord(recordings[0]!).findings.map(({ what }) => what)).toEqual([
      'Waypoints 2 to 3: “3.0.1” is not a time.',
    ]);
  });

  it('leaves out a dive in another mode than open circuit, and says so', async () => {
    const { recordings, notes } = await read(
      file(plain + dive(waypoint('0', '0', '<divemode type="closedcircuit"/>') + waypoint('9', '1'))),
    );
    expect(recordings).toHaveLength(1);
    expect(notes).toEqual([
      'Dive 2 was left out: it is in the mode “closedcircuit”, and the model here takes open circuit alone.',
    ]);
  });
});

describe('a broken or hostile UDDF file', () => {
  const refused = async (text: string) => {
    const result = await readUddf(piecesOf(text, 4096));
    if (result.ok) throw new Error('it was read');
    return result;
  };

  it('with a bomb of entities is refused before any of them is looked at', async () => {
    const bomb = `<?xml version="1.0"?><!DOCTYPE uddf [<!ENTITY a "aaaaaaaaaa">${Array.from({ length: 9 }, (_, i) => `<!ENTITY ${String.fromCharCode(98 + i)} "${`&${String.fromCharCode(97 + i)};`.repeat(10)}">`).join('')}]><uddf version="3.2.2">&j;</uddf>`;
    expect((await refused(bomb)).what).toBe('The file brings a document type definition, which is not read here.');
  });

  it('that refers to an outside file is refused the same way', async () => {
    expect((await refused('<!DOCTYPE uddf SYSTEM "file:///etc/passwd"><uddf/>')).what).toContain(
      'document type definition',
    );
  });

  it('with an entity nobody defined is refused with its line', async () => {
    expect((await refused(file(plain.replace('20.0', '&boo;')))).what).toMatch(
      /^Line 5 is not well-formed XML, in dive 1, after waypoint 1: .*a & or < stands alone/,
    );
  });

  it('that ends in the middle says where, and gives back what was whole', async () => {
    const text = file(plain + plain);
    const result = await refused(text.slice(0, text.lastIndexOf('<divetime>1560')));
    expect(result.what).toBe('The file ends in the middle, at line 5, in dive 2, after waypoint 2.');
    expect(result.rescued.map(({ timeS }) => timeS.length)).toEqual([3, 2]);
  });

  it('that is cut anywhere at all is refused, never read as whole', async () => {
    const text = file(plain, gases);
    const end = text.indexOf('</profiledata>');
    for (let at = 0; at < end; at += 7) expect((await readUddf([text.slice(0, at)])).ok).toBe(false);
  });

  it.each([
    ['something else', '<html><body/></html>', 'This is XML, but not a UDDF file: its first element is <html>.'],
    ['no dives', file(''), 'The file holds no dive that can be read.'],
    ['tags that cross', file('<dive><samples></dive></samples>'), 'not well-formed'],
    [
      'a mix nobody defined',
      file(dive(waypoint('0', '0', '<switchmix ref="x"/>'))),
      'the mix “x”, which the file does not define',
    ],
    [
      'percent for fractions',
      file(dive(waypoint('0', '0', '<switchmix ref="wrong"/>')), gases),
      'its o2 is 32, and a fraction is at most 1',
    ],
    ['hydrogen', file(dive(waypoint('0', '0', '<switchmix ref="hydrox"/>')), gases), 'holds argon or hydrogen'],
    ['endless nesting', `<uddf version="3.2.2">${'<a>'.repeat(100_000)}`, 'nested too deeply'],
    [
      'an endless text',
      `<uddf version="3.2.2"><generator>${'x'.repeat(1_100_000)}</generator></uddf>`,
      'too long to be a value',
    ],
    ['nothing', '', 'The file is empty.'],
  ])('with %s is refused in words', async (_, text, what) => {
    const result = await refused(text);
    expect(result.what).toContain(what);
    expect(result.mend).not.toBe('');
  });

  it('stops when told to', async () => {
    expect(await readUddf(piecesOf(file(plain), 9), { cancelled: () => true })).toMatchObject({
      ok: false,
      what: 'Reading was stopped.',
    });
  });
});
